package freshet.places;

import java.time.LocalDate;

/** One year's turn of a season window, both days included; {@code year} is the year it opens in. */
public record Span(Window window, int year, LocalDate opensOn, LocalDate dueOn) {

    /** The name of the turn: "2026", or "2025/26" when it passes the year's end. */
    public String label() {
        return dueOn.getYear() == opensOn.getYear()
                ? String.valueOf(opensOn.getYear())
                : "%d/%02d".formatted(opensOn.getYear(), dueOn.getYear() % 100);
    }

    public boolean contains(LocalDate day) {
        return !day.isBefore(opensOn) && !day.isAfter(dueOn);
    }
}
