package freshet.wear;

import freshet.reliability.CapacityReading;
import freshet.reliability.Interval;
import freshet.reliability.PooledWear;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The wear of a unit of few tests, drawn towards that of the units of its model.
 *
 * @param lines units of the model that have a line of their own
 * @param own this unit is one of them; else it is expected to wear as they do on the mean
 * @param interval two-sided, too narrow because the errors that were pooled come from few tests
 * @param reachesHours lifetime hours at which the unit would come to the threshold at this rate from the middle of its tests; null when it does not fall
 *     or no test counts
 */
public record Pooled(
        int lines,
        boolean own,
        PooledWear.UnitSlope slope,
        double meanSlopePerHour,
        @Nullable Interval interval,
        @Nullable Double reachesHours) {

    /** With fewer tests than this a unit's own line is helped by those of its model; common practice, no source. */
    static final int FEW_TESTS = 6;

    /** Of more units than this some stand for all: a page is not worth minutes, and the mean is known by then. */
    static final int MOST_UNITS = 1_000;

    /** Fewer lines than this say nothing about how units differ. */
    private static final int LEAST_LINES = 3;

    /** Steeper than this per hour is no wear but two tests at nearly the same hours. */
    private static final double STEEPEST = 1;

    /** @param lines of all units of the model, this one too */
    static @Nullable Pooled of(long unitId, Map<Long, UnitLine> lines, WearQuestion asked) {
        List<PooledWear.OwnSlope> slopes = new ArrayList<>();
        int mine = -1;
        for (Map.Entry<Long, UnitLine> line : lines.entrySet()) {
            PooledWear.OwnSlope slope = line.getValue().slope();
            if (slope != null && Math.abs(slope.slopePerHour()) < STEEPEST && slope.standardError() < STEEPEST) {
                mine = line.getKey() == unitId ? slopes.size() : mine;
                slopes.add(slope);
            }
        }
        if (slopes.size() < LEAST_LINES) {
            return null;
        }
        PooledWear pooled = PooledWear.of(slopes);
        PooledWear.UnitSlope slope = mine >= 0 ? pooled.units().get(mine) : pooled.ofAnother();
        UnitLine line = lines.get(unitId);
        return slope == null
                ? null
                : new Pooled(
                        slopes.size(),
                        mine >= 0,
                        slope,
                        pooled.meanSlope(),
                        slope.interval(WearQuestion.LEVEL),
                        line == null ? null : reaches(line.used(), slope.slopePerHour(), asked.threshold()));
    }

    private static @Nullable Double reaches(List<CapacityReading> used, double slopePerHour, double threshold) {
        double weights = 0;
        double hours = 0;
        double fractions = 0;
        for (CapacityReading reading : used) {
            double u = reading.standardUncertainty() == null ? 1 : reading.standardUncertainty();
            weights += 1 / (u * u);
            hours += reading.runHours() / (u * u);
            fractions += reading.remainingFraction() / (u * u);
        }
        return weights == 0 || slopePerHour >= 0
                ? null
                : Double.valueOf((hours + (threshold * weights - fractions) / slopePerHour) / weights);
    }
}
