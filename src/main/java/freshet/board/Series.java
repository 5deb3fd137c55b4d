package freshet.board;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Lifetime totals of a unit as its meters of one kind were read, oldest first, all meters together. */
record Series(List<Point> points) {

    static final Series NEVER_READ = new Series(List.of());

    /** As far back as use is looked at to foretell. */
    private static final Duration LATELY = Duration.ofDays(90);
    /** Totals are kept to the hundredth; less than this is no difference. */
    private static final double NOTHING = 1e-6;

    /** A total at a moment. */
    record Point(Instant at, LocalDate day, double total) {}

    boolean empty() {
        return points.isEmpty();
    }

    Point last() {
        return points.get(points.size() - 1);
    }

    /** What was read up to a moment. */
    Series upTo(Instant at) {
        int end = points.size();
        while (end > 0 && points.get(end - 1).at().isAfter(at)) {
            end--;
        }
        return end == points.size() ? this : new Series(points.subList(0, end));
    }

    /** The total at a moment, a straight line between readings; before the first as at the first, after the last as at the last. */
    double at(Instant at) {
        Point before = points.get(0);
        for (Point point : points) {
            if (point.at().isAfter(at)) {
                return between(before, point, at);
            }
            before = point;
        }
        return before.total();
    }

    private static double between(Point before, Point after, Instant at) {
        if (!before.at().isBefore(at)) {
            return before.total();
        }
        double passed = (double) Duration.between(before.at(), at).toMillis()
                / Duration.between(before.at(), after.at()).toMillis();
        return before.total() + passed * (after.total() - before.total());
    }

    /** The reading that came to a total; null when none did. */
    @Nullable
    Point reaching(double total) {
        return points.stream()
                .filter(point -> point.total() >= total - NOTHING)
                .findFirst()
                .orElse(null);
    }

    /** The day of the last reading that showed a rise; null when none did. */
    @Nullable
    LocalDate lastRise() {
        for (int i = points.size() - 1; i > 0; i--) {
            if (points.get(i).total() > points.get(i - 1).total() + NOTHING) {
                return points.get(i).day();
            }
        }
        return null;
    }

    /** Rise for each day in use, over the last 90 days that were read or the shortest stretch beyond; null below a day of use. */
    @Nullable
    Double rate(Storage storage) {
        if (points.isEmpty()) {
            return null;
        }
        Point from = points.get(0);
        for (Point point : points) {
            if (!point.at().isAfter(last().at().minus(LATELY))) {
                from = point;
            }
        }
        double days = storage.daysInUse(from.at(), last().at());
        return days < 1 ? null : (Double) ((last().total() - from.total()) / days);
    }
}
