package freshet.api;

import freshet.reliability.CapacityReading;
import freshet.reliability.CapacityTrend;
import freshet.reliability.FailureTrend;
import freshet.reliability.Indicators;
import freshet.reliability.Lives;
import freshet.reliability.Mtbf;
import freshet.reliability.PooledWear;
import freshet.reliability.Recurrence;
import freshet.reliability.ReplacementAge;
import freshet.reliability.Spares;
import freshet.reliability.Survival;
import freshet.reliability.Termination;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The calculations of wear, lives and repairs, as they are asked. */
final class FleetCalculations {

    private static final double LONGEST_H = 1e9;
    private static final double SHORTEST_H = 1e-6;
    private static final double LEAST_LEVEL = 0.5;
    private static final double GREATEST_LEVEL = 0.999999;
    private static final double USUAL_LEVEL = 0.95;
    private static final String LEVEL = "level of confidence";

    private FleetCalculations() {}

    /** One measured remaining capacity of a unit. */
    record Reading(
            @Asked(value = "lifetime run hours", unit = "h", from = 0, to = LONGEST_H)
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
                    to = LONGEST_H,
                    most = CapacityTrend.MOST_READINGS)
            @Nullable
            List<Double> repairHours,

            @Asked(value = "share at which the unit is done", from = 0, to = 1e6)
            double threshold,

            @Asked(value = "run hours today", unit = "h", from = 0, to = LONGEST_H)
            double nowHours,

            @Asked(value = LEVEL, from = LEAST_LEVEL, to = GREATEST_LEVEL, usual = USUAL_LEVEL)
            double level,

            @Asked(
                    value = "run hours at which the line is asked",
                    unit = "h",
                    from = 0,
                    to = LONGEST_H,
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

    /** One life, ended by failure or still running. */
    record OneLife(
            @Asked(value = "age at failure, or so far", unit = "h", from = 0, to = LONGEST_H)
            double hours,

            @Asked("whether it ended by failure") boolean failed,

            @Asked(value = "age at which it came under watch, below hours", unit = "h", from = 0, to = LONGEST_H)
            @Nullable
            Double entryHours) {}

    record LivesRequest(
            @Asked(value = "lives of like parts", fewest = 1, most = Lives.MOST_LIVES)
            List<OneLife> lives,

            @Asked(value = LEVEL, from = LEAST_LEVEL, to = GREATEST_LEVEL, usual = USUAL_LEVEL)
            double level)
            implements Calculation {

        @Override
        public Lives answer() {
            return Lives.of(
                    lives.stream()
                            .map(in -> new Lives.Life(in.hours, in.failed, in.entryHours))
                            .toList(),
                    level);
        }
    }

    record SurvivalRequest(
            @Asked(value = "shape of the Weibull law", from = 0.01, to = 1e9)
            double shape,

            @Asked(value = "age by which 63.2 % have failed", unit = "h", from = SHORTEST_H, to = LONGEST_H)
            double scaleHours,

            @Asked(value = "age reached", unit = "h", from = 0, to = LONGEST_H)
            double ageHours,

            @Asked(value = "hours to come", unit = "h", from = 0, to = LONGEST_H)
            double missionHours)
            implements Calculation {

        @Override
        public Survival answer() {
            return Survival.of(shape, scaleHours, ageHours, missionHours);
        }
    }

    record MtbfRequest(
            @Asked(value = "hours of all units together", unit = "h", from = SHORTEST_H, to = 1e12)
            double totalHours,

            @Asked(value = "failures in them, 1 at least when a failure ended the record", from = 0, to = 1e6)
            int failures,

            @Asked("what ended the record") Termination termination,

            @Asked(value = LEVEL, from = LEAST_LEVEL, to = GREATEST_LEVEL, usual = USUAL_LEVEL)
            double level)
            implements Calculation {

        @Override
        public Mtbf answer() {
            return Mtbf.of(totalHours, failures, termination, level);
        }
    }

    /** A repairable unit watched from new. */
    record WatchedUnit(
            @Asked(
                    value = "when it had an event, not after endHours",
                    unit = "h",
                    from = 0,
                    to = LONGEST_H,
                    most = 1_000_000)
            List<Double> eventHours,

            @Asked(value = "until when it was watched", unit = "h", from = 0, to = LONGEST_H)
            double endHours) {}

    record RecurrenceRequest(
            @Asked(value = "units of the fleet", fewest = 1, most = 100_000)
            List<WatchedUnit> units,

            @Asked(value = LEVEL, from = LEAST_LEVEL, to = GREATEST_LEVEL, usual = USUAL_LEVEL)
            double level)
            implements Calculation {

        @Override
        public Recurrence answer() {
            return Recurrence.of(
                    units.stream()
                            .map(in -> new Recurrence.WatchedUnit(in.eventHours, in.endHours))
                            .toList(),
                    level);
        }
    }

    record FailureTrendRequest(
            @Asked(value = "when it failed", unit = "h", from = SHORTEST_H, to = LONGEST_H, most = Mtbf.MOST_FAILURES)
            List<Double> eventHours,

            @Asked(value = "end of the record", unit = "h", from = SHORTEST_H, to = LONGEST_H)
            double endHours,

            @Asked("what ended the record") Termination termination,

            @Asked(value = LEVEL, from = LEAST_LEVEL, to = GREATEST_LEVEL, usual = USUAL_LEVEL)
            double level)
            implements Calculation {

        @Override
        public FailureTrend answer() {
            return FailureTrend.of(eventHours, endHours, termination, level);
        }
    }

    record ReplacementAgeRequest(
            @Asked(value = "shape of the Weibull law", from = 0.01, to = 1e9)
            double shape,

            @Asked(value = "age by which 63.2 % have failed", unit = "h", from = SHORTEST_H, to = LONGEST_H)
            double scaleHours,

            @Asked(value = "cost of a renewal in time, in any money", from = 1e-6, to = 1e12)
            double plannedCost,

            @Asked(value = "whole cost of one after a failure, in the same money", from = 1e-6, to = 1e12)
            double failureCost)
            implements Calculation {

        @Override
        public ReplacementAge answer() {
            return ReplacementAge.of(shape, scaleHours, plannedCost, failureCost);
        }
    }

    /** Asks by meanDemand, or by demandPerYear, leadDays and peakFactor. */
    record SparesRequest(
            @Asked(value = "demand over the time to be bridged", unit = "spares", from = 0, to = 1e6) @Nullable
            Double meanDemand,

            @Asked(value = "demand in its place", unit = "spares per year", from = 0, to = 1e6) @Nullable
            Double demandPerYear,

            @Asked(value = "time to be bridged", unit = "days", from = 0, to = 3650) @Nullable
            Double leadDays,

            @Asked(value = "demand of the season over the year's mean", from = 0.01, to = 100) @Nullable
            Double peakFactor,

            @Asked(value = "chance of no shortage", from = 0.5, to = 0.999999)
            double serviceLevel)
            implements Calculation {

        @Override
        public Spares answer() {
            if (meanDemand == null) {
                return Spares.forLeadTime(
                        inItsPlace("demandPerYear", demandPerYear),
                        inItsPlace("leadDays", leadDays),
                        inItsPlace("peakFactor", peakFactor),
                        serviceLevel);
            }
            notBesideIt("demandPerYear", demandPerYear);
            notBesideIt("leadDays", leadDays);
            notBesideIt("peakFactor", peakFactor);
            return Spares.of(meanDemand, serviceLevel);
        }

        private static double inItsPlace(String field, @Nullable Double value) {
            if (value == null) {
                throw new Refusal(field, "is missing, and so is meanDemand");
            }
            return value;
        }

        private static void notBesideIt(String field, @Nullable Double value) {
            if (value != null) {
                throw new Refusal(field, Words.of(value, "") + " is given beside meanDemand; give one or the other");
            }
        }
    }

    /** One time down. */
    record Down(
            @Asked("why") Indicators.DownType type,

            @Asked(value = "hours down", unit = "h", from = 0, to = LONGEST_H)
            double downHours,

            @Asked(value = "of these until it was found", unit = "h", from = 0, to = LONGEST_H) @Nullable
            Double detectionHours,

            @Asked(value = "of these hands-on", unit = "h", from = 0, to = LONGEST_H) @Nullable
            Double activeRepairHours) {}

    /** One unit over the period. */
    record UnitRecord(
            @Asked(value = "calendar hours in which it was wanted", unit = "h", from = 0, to = LONGEST_H)
            double requiredHours,

            @Asked(value = "hours run", unit = "h", from = 0, to = LONGEST_H)
            double operatingHours,

            @Asked(value = "times down, not more hours together than it was wanted", most = 100_000)
            List<Down> downs) {}

    record IndicatorsRequest(
            @Asked(value = "units of the fleet", fewest = 1, most = 100_000)
            List<UnitRecord> units) implements Calculation {

        @Override
        public Indicators answer() {
            return Indicators.of(units.stream()
                    .map(in -> new Indicators.UnitRecord(in.requiredHours, in.operatingHours, downs(in)))
                    .toList());
        }

        private static List<Indicators.Down> downs(UnitRecord unit) {
            return unit.downs.stream()
                    .map(in -> new Indicators.Down(in.type, in.downHours, in.detectionHours, in.activeRepairHours))
                    .toList();
        }
    }
}
