package freshet.board;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** When a unit was laid up, oldest first; the last stretch may still last. */
record Storage(List<Stretch> stretches) {

    static final Storage NEVER = new Storage(List.of());

    /** From the record that laid it up to the one that proved it again. */
    record Stretch(
            Instant from,
            LocalDate fromDay,
            @Nullable Instant until,
            @Nullable LocalDate untilDay) {

        boolean holds(Instant at) {
            return !from.isAfter(at) && (until == null || until.isAfter(at));
        }
    }

    boolean lasts() {
        return !stretches.isEmpty() && stretches.get(stretches.size() - 1).until() == null;
    }

    /** The first day of the stretch that holds a moment; null in use. */
    @Nullable
    LocalDate since(Instant at) {
        return stretches.stream()
                .filter(stretch -> stretch.holds(at))
                .map(Stretch::fromDay)
                .findFirst()
                .orElse(null);
    }

    /** The day itself or, when the unit was laid up then, the day on which it was opened again. */
    LocalDate inUse(LocalDate day) {
        for (Stretch stretch : stretches) {
            if (stretch.untilDay() != null && !day.isBefore(stretch.fromDay()) && day.isBefore(stretch.untilDay())) {
                return stretch.untilDay();
            }
        }
        return day;
    }

    /** Days in use between two moments. */
    double daysInUse(Instant from, Instant to) {
        long millis = Duration.between(from, to).toMillis();
        for (Stretch stretch : stretches) {
            Instant begin = stretch.from().isAfter(from) ? stretch.from() : from;
            Instant end = stretch.until() != null && stretch.until().isBefore(to) ? stretch.until() : to;
            millis -= Math.max(0, Duration.between(begin, end).toMillis());
        }
        return millis / 86_400_000.0;
    }
}
