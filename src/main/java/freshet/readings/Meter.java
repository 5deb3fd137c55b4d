package freshet.readings;

import static freshet.people.Refused.Wrong.at;

import freshet.people.Refused.Wrong;
import freshet.readings.MeterLog.What;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.NavigableSet;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** One meter on one unit and the points that are known of it; it knows what a further reading may be. */
final class Meter {

    /** Something the meter showed at a moment; at one moment a fitting comes before a reading and a removal after. */
    record Point(Instant at, What what, BigDecimal value, boolean rolledOver) {}

    private static final Comparator<Point> IN_ORDER =
            Comparator.comparing(Point::at).thenComparing(Point::what);

    final long id;
    final MeterKind kind;
    /** Nobody saw it fitted: it is known from its readings only. */
    final boolean implied;

    final Instant fittedAt;
    final @Nullable Instant removedAt;

    @Nullable
    BigDecimal rollsOverAt;

    private final NavigableSet<Point> points = new TreeSet<>(IN_ORDER);

    Meter(
            long id,
            MeterKind kind,
            boolean implied,
            Instant fittedAt,
            BigDecimal firstValue,
            @Nullable BigDecimal rollsOverAt,
            @Nullable Instant removedAt,
            @Nullable BigDecimal lastValue) {
        this.id = id;
        this.kind = kind;
        this.implied = implied;
        this.fittedAt = fittedAt;
        this.rollsOverAt = rollsOverAt;
        this.removedAt = removedAt;
        if (!implied) {
            points.add(new Point(fittedAt, What.FITTED, firstValue, false));
        }
        if (removedAt != null && lastValue != null) {
            points.add(new Point(removedAt, What.REMOVED, lastValue, false));
        }
    }

    NavigableSet<Point> points() {
        return points;
    }

    /** Adds what is known to be right. */
    void add(Point point) {
        points.add(point);
    }

    /** The same reading, already there; null when there is none at that moment. */
    @Nullable
    Point readingAt(Instant at) {
        Point found = points.floor(new Point(at, What.READ, BigDecimal.ZERO, false));
        return found != null && found.what() == What.READ && found.at().equals(at) ? found : null;
    }

    /** How far it rose from one point to the next; null when it fell without a rollover. */
    @Nullable
    BigDecimal rise(Point from, Point to) {
        BigDecimal rise = to.value().subtract(from.value());
        if (rise.signum() >= 0) {
            return rise;
        }
        // the declaration counts only where the value fell, so that a reading found later may go in between
        return to.rolledOver() && rollsOverAt != null ? rise.add(rollsOverAt) : null;
    }

    /** What is wrong with a new point between those that are known; null when it fits. */
    @Nullable
    Wrong objection(Point point) {
        Point before = points.lower(point);
        Point after = points.higher(point);
        if (point.rolledOver() && rollsOverAt == null) {
            return at("rollsOverAt", "readings.rollsOverAt.unknown");
        }
        if (rollsOverAt != null && point.value().compareTo(rollsOverAt) > 0) {
            return at("value", "readings.value.beyondRollover", point.value(), rollsOverAt);
        }
        if (point.rolledOver() && (before == null || before.value().compareTo(point.value()) <= 0)) {
            return at("rolledOver", "readings.rolledOver.notLower", point.value());
        }
        if (before != null) {
            BigDecimal rise = rise(before, point);
            if (rise == null) {
                return at("value", "readings.value.below", point.value(), before.value(), before.at());
            }
            BigDecimal most = kind.mostIn(Duration.between(before.at(), point.at()));
            if (rise.compareTo(most) > 0) {
                return at("value", "readings.value.tooFast", rise, before.value(), before.at(), most);
            }
        }
        if (after != null) {
            BigDecimal rise = rise(point, after);
            if (rise == null) {
                return at("value", "readings.value.above", point.value(), after.value(), after.at());
            }
            BigDecimal most = kind.mostIn(Duration.between(point.at(), after.at()));
            if (rise.compareTo(most) > 0) {
                return at("value", "readings.value.tooFastAfter", point.value(), after.value(), after.at(), most);
            }
        }
        return null;
    }

    /** What is wrong with taking it off at a moment with this value; null when that fits. */
    @Nullable
    Wrong objectionToRemoval(Instant when, BigDecimal lastValue) {
        Point removal = new Point(when, What.REMOVED, lastValue, false);
        Point after = points.higher(removal);
        if (after != null || when.isBefore(fittedAt)) {
            return at("at", "readings.swap.readLater", after == null ? fittedAt : after.at());
        }
        Wrong wrong = objection(removal);
        return wrong == null ? null : new Wrong("lastValue", wrong.code(), wrong.arguments());
    }

    /** Whether the points still follow each other when one is taken out. */
    boolean standsWithout(Point taken) {
        Point before = points.lower(taken);
        Point after = points.higher(taken);
        return before == null || after == null || rise(before, after) != null;
    }
}
