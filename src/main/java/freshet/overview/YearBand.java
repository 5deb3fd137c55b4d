package freshet.overview;

import freshet.places.Span;
import freshet.places.Window;
import freshet.places.WindowKind;
import java.time.LocalDate;
import java.time.Month;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;

/** The year as a band of twelve months: where its windows lie, where today is, and the days on which something was signed. */
record YearBand(int year, List<Bar> bars, List<MonthName> months, List<String> ticks, List<String> dots, String today) {

    /** A window's part of this year; one that wraps the year end has two. */
    record Bar(String pattern, String x, String width) {}

    /** A month's name, at the middle of it. */
    record MonthName(String x, String letter, String name) {}

    static YearBand of(LocalDate today, Collection<Window> windows, Collection<LocalDate> signed, Locale locale) {
        LocalDate first = today.withDayOfYear(1);
        LocalDate last = today.withDayOfYear(today.lengthOfYear());
        List<Bar> bars = new ArrayList<>();
        for (Window window : windows) {
            for (Span span : window.spans(first, last)) {
                LocalDate from = span.opensOn().isBefore(first) ? first : span.opensOn();
                LocalDate to = span.dueOn().isAfter(last) ? last : span.dueOn();
                double width = (to.getDayOfYear() - from.getDayOfYear() + 1.0) / today.lengthOfYear();
                bars.add(new Bar(pattern(window.kind()), start(from), percent(width)));
            }
        }
        List<MonthName> months = new ArrayList<>();
        List<String> ticks = new ArrayList<>();
        for (Month month : Month.values()) {
            LocalDate begins = LocalDate.of(today.getYear(), month, 1);
            double middle = (begins.getDayOfYear() - 1 + begins.lengthOfMonth() / 2.0) / today.lengthOfYear();
            months.add(new MonthName(
                    percent(middle),
                    month.getDisplayName(TextStyle.NARROW, locale),
                    month.getDisplayName(TextStyle.SHORT, locale)));
            if (month != Month.JANUARY) {
                ticks.add(start(begins));
            }
        }
        List<String> dots = signed.stream()
                .filter(day -> day.getYear() == today.getYear())
                .map(YearBand::middle)
                .toList();
        return new YearBand(today.getYear(), bars, months, ticks, dots, middle(today));
    }

    /** The hatching of a window: the class of its bars. */
    static String pattern(WindowKind kind) {
        return switch (kind) {
            case OPENING -> "open";
            case RUNNING -> "run";
            case CLOSING -> "close";
        };
    }

    private static String start(LocalDate day) {
        return percent((day.getDayOfYear() - 1.0) / day.lengthOfYear());
    }

    private static String middle(LocalDate day) {
        return percent((day.getDayOfYear() - 0.5) / day.lengthOfYear());
    }

    private static String percent(double fraction) {
        return String.format(Locale.ROOT, "%.2f%%", 100 * fraction);
    }
}
