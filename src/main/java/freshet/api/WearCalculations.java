package freshet.api;

import freshet.reliability.CapacityReading;
import freshet.reliability.CapacityTrend;
import freshet.reliability.FailureTrend;
import freshet.reliability.Mtbf;
import freshet.reliability.PooledWear;
import freshet.reliability.Termination;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The calculations of wear and of failures over time, as they are asked. */
final class WearCalculations {

    private WearCalculations() {}

    /** One measured remaining capacity of a unit. */
    record Reading(
            @Asked(value = "lifetime run hours", unit = "h", from = 0, to = Shapes.LONGEST_H)
            double runHours,

            @Asked(value = "share of the reference left, 1 as new", from = 0, to = 1e6)
            double remainingFraction,

            @Asked(value = "of that share; weights count when every reading has one", from = 1e-6, to = 1e3) @Nullable
            Double standardUncertainty) {}

    record CapacityTrendRequest(
            @Asked(value = "readings of one unit", most = CapacityTrend.MOST_READINGS)
            List<Reading> readings,

            @Asked(
                    value = "run hours of repairs; readings before the last are left out",
                    unit = "h",
                    from = 0,
                    to = Shapes.LONGEST_H,
                    most = CapacityTrend.MOST_READINGS)
            @Nullable
            List<Double> repairHours,

            @Asked(value = "share at which the unit is done", from = 0, to = 1e6)
            double threshold,

            @Asked(value = "run hours today", unit = "h", from = 0, to = Shapes.LONGEST_H)
            double nowHours,

            @Asked(
                    value = Shapes.LEVEL,
                    from = Shapes.LEAST_LEVEL,
                    to = Shapes.GREATEST_LEVEL,
                    usual = Shapes.USUAL_LEVEL)
            double level,

            @Asked(
                    value = "run hours at which the line is asked",
                    unit = "h",
                    from = 0,
                    to = Shapes.LONGEST_H,
                    most = CapacityTrend.MOST_READINGS)
            @Nullable
            List<Double> atHours)
            implements Calculation {

        @Override
        public CapacityTrend answer() {
            List<CapacityReading> taken = readings.stream()
                    .map(in -> new CapacityReading(in.runHours, in.remainingFraction, in.standardUncertainty))
                    .toList();
            return CapacityTrend.of(
                    taken,
                    repairHours == null ? List.of() : repairHours,
                    threshold,
                    nowHours,
                    level,
                    atHours == null ? List.of() : atHours);
        }
    }

    /** The wear slope of one unit by its own readings. */
    record Slope(
            @Asked(value = "change of share", unit = "per hour", from = -1e3, to = 1e3)
            double slopePerHour,

            @Asked(value = "of that slope", unit = "per hour", from = 1e-15, to = 1e3)
            double standardError) {}

    record PooledWearRequest(
            @Asked(value = "slopes of like units", fewest = 1, most = 100_000)
            List<Slope> slopes) implements Calculation {

        @Override
        public PooledWear answer() {
            return PooledWear.of(slopes.stream()
                    .map(in -> new PooledWear.OwnSlope(in.slopePerHour, in.standardError))
                    .toList());
        }
    }

    record FailureTrendRequest(
            @Asked(
                    value = "when it failed",
                    unit = "h",
                    from = Shapes.SHORTEST_H,
                    to = Shapes.LONGEST_H,
                    most = Mtbf.MOST_FAILURES)
            List<Double> eventHours,

            @Asked(value = "end of the record", unit = "h", from = Shapes.SHORTEST_H, to = Shapes.LONGEST_H)
            double endHours,

            @Asked("what ended the record") Termination termination,

            @Asked(
                    value = Shapes.LEVEL,
                    from = Shapes.LEAST_LEVEL,
                    to = Shapes.GREATEST_LEVEL,
                    usual = Shapes.USUAL_LEVEL)
            double level)
            implements Calculation {

        @Override
        public FailureTrend answer() {
            return FailureTrend.of(eventHours, endHours, termination, level);
        }
    }
}
