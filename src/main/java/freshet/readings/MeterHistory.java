package freshet.readings;

import static freshet.people.Refused.Wrong.at;

import freshet.people.Refused.Wrong;
import freshet.readings.Meter.Point;
import freshet.readings.MeterLog.What;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The meters of one kind that a unit has carried, one after the other. */
final class MeterHistory {

    /** A phone's clock may be this much ahead of ours. */
    static final Duration CLOCKS_DIFFER = Duration.ofMinutes(5);

    private static final BigDecimal HIGHEST = new BigDecimal("9999999999.99");

    private final List<Meter> meters;

    /** @param meters in the order in which they were fitted */
    MeterHistory(List<Meter> meters) {
        this.meters = meters;
    }

    /** The meter that is on the unit now. */
    @Nullable
    Meter present() {
        Meter last = meters.isEmpty() ? null : meters.get(meters.size() - 1);
        return last == null || last.removedAt != null ? null : last;
    }

    /** The meter that was on the unit at a moment; the first, if nobody saw it fitted, reaches back without end. */
    @Nullable
    Meter on(Instant at) {
        for (int i = meters.size() - 1; i >= 0; i--) {
            Meter meter = meters.get(i);
            if (!meter.fittedAt.isAfter(at) || (i == 0 && meter.implied)) {
                return meter.removedAt != null && meter.removedAt.isBefore(at) ? null : meter;
            }
        }
        return null;
    }

    /** What is wrong with a value for this kind of meter, whatever else is known; null when nothing is. */
    static @Nullable Wrong shape(String field, MeterKind kind, BigDecimal value) {
        if (value.signum() < 0 || value.compareTo(HIGHEST) > 0) {
            return at(field, "readings.value.range", value);
        }
        if (value.stripTrailingZeros().scale() > kind.decimals()) {
            return at(field, "readings.value.decimals." + kind, value);
        }
        return null;
    }

    static @Nullable Wrong future(Instant when, Instant now) {
        return when.isAfter(now.plus(CLOCKS_DIFFER)) ? at("at", "readings.at.future") : null;
    }

    /** What is wrong with a reading whatever the meter has shown before; null when nothing is. */
    static @Nullable Wrong shape(ReadingDraft draft, Instant now) {
        Wrong wrong = shape("value", draft.kind(), draft.value());
        if (wrong == null && draft.rollsOverAt() != null) {
            wrong = shapeOfRollover(draft.kind(), draft.rollsOverAt());
        }
        return wrong == null ? future(draft.at(), now) : wrong;
    }

    private static @Nullable Wrong shapeOfRollover(MeterKind kind, @Nullable BigDecimal rollsOverAt) {
        if (rollsOverAt == null) {
            return null;
        }
        return rollsOverAt.signum() == 0
                ? at("rollsOverAt", "readings.value.range", rollsOverAt)
                : shape("rollsOverAt", kind, rollsOverAt);
    }

    /** What is wrong with a meter that starts at this value; null when nothing is. */
    static @Nullable Wrong shapeOfMeter(MeterKind kind, BigDecimal firstValue, @Nullable BigDecimal rollsOverAt) {
        Wrong wrong = shape("firstValue", kind, firstValue);
        if (wrong == null) {
            wrong = shapeOfRollover(kind, rollsOverAt);
        }
        return wrong == null && rollsOverAt != null && firstValue.compareTo(rollsOverAt) > 0
                ? at("firstValue", "readings.value.beyondRollover", firstValue, rollsOverAt)
                : wrong;
    }

    /** What is wrong with a well-shaped reading of the meter that was on then; null when it fits, or stands there already. */
    @Nullable
    Wrong objection(ReadingDraft draft) {
        Meter meter = on(draft.at());
        if (meter == null) {
            return at("at", "readings.at.noMeter", draft.at());
        }
        Point there = meter.readingAt(draft.at());
        if (there != null) {
            return there.value().compareTo(draft.value()) == 0
                    ? null
                    : at("value", "readings.value.readAlready", there.value(), draft.at());
        }
        if (meter.rollsOverAt == null) {
            meter.rollsOverAt = draft.rollsOverAt();
        } else if (draft.rollsOverAt() != null && draft.rollsOverAt().compareTo(meter.rollsOverAt) != 0) {
            return at("rollsOverAt", "readings.rollsOverAt.other", meter.rollsOverAt);
        }
        return meter.objection(new Point(draft.at(), What.READ, draft.value(), draft.rolledOver()));
    }

    /** Whether exactly this swap was declared before. */
    boolean swappedAlready(Instant when, BigDecimal lastValue, BigDecimal firstValue) {
        Meter now = present();
        if (now == null || meters.size() < 2 || !now.fittedAt.equals(when)) {
            return false;
        }
        Point removed = meters.get(meters.size() - 2).points().last();
        return removed.value().compareTo(lastValue) == 0
                && now.points().first().value().compareTo(firstValue) == 0;
    }

    /** Whether the other readings still follow each other without this one. */
    boolean standsWithout(MeterTable.StoredReading reading) {
        for (Meter meter : meters) {
            if (meter.id == reading.meterId()) {
                return meter.standsWithout(reading.point());
            }
        }
        return true;
    }

    /**
     * The log with its rises and lifetime totals.
     *
     * @param kept the stored readings, those that were withdrawn too, in order of time
     */
    MeterLog log(long unitId, MeterKind kind, List<MeterTable.StoredReading> kept) {
        Map<Long, Map<Instant, MeterTable.StoredReading>> byMeter = new HashMap<>();
        List<MeterLog.Line> lines = new ArrayList<>();
        for (MeterTable.StoredReading reading : kept) {
            if (reading.withdrawnWhy() == null) {
                byMeter.computeIfAbsent(reading.meterId(), any -> new HashMap<>())
                        .put(reading.at(), reading);
            } else {
                lines.add(reading.line(What.WITHDRAWN, null, null));
            }
        }
        BigDecimal lifetime = BigDecimal.ZERO;
        for (Meter meter : meters) {
            Point before = null;
            for (Point point : meter.points()) {
                BigDecimal rise = before == null ? null : meter.rise(before, point);
                if (rise != null) {
                    lifetime = lifetime.add(rise);
                } else if (meter == meters.get(0)) {
                    lifetime = point.value();
                }
                MeterTable.StoredReading reading = point.what() == What.READ
                        ? byMeter.getOrDefault(meter.id, Map.of()).get(point.at())
                        : null;
                lines.add(
                        reading == null
                                ? new MeterLog.Line(
                                        point.what(),
                                        point.at(),
                                        point.value(),
                                        false,
                                        null,
                                        rise,
                                        lifetime,
                                        null,
                                        null)
                                : reading.line(What.READ, rise, lifetime));
                before = point;
            }
        }
        lines.sort(Comparator.comparing(MeterLog.Line::at));
        Meter present = present();
        return new MeterLog(
                unitId,
                kind,
                List.copyOf(lines),
                present == null ? null : present.fittedAt,
                present == null ? null : present.rollsOverAt);
    }
}
