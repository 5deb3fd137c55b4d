package freshet.api;

import freshet.reliability.Indicators;
import freshet.reliability.Recurrence;
import freshet.reliability.Spares;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The calculations of a fleet and its stock of spares, as they are asked. */
final class FleetCalculations {

    private FleetCalculations() {}

    /** A repairable unit watched from new. */
    record WatchedUnit(
            @Asked(
                    value = "when it had an event, not after endHours",
                    unit = "h",
                    from = 0,
                    to = Shapes.LONGEST_H,
                    most = 1_000_000)
            List<Double> eventHours,

            @Asked(value = "until when it was watched", unit = "h", from = 0, to = Shapes.LONGEST_H)
            double endHours) {}

    record RecurrenceRequest(
            @Asked(value = "units of the fleet", fewest = 1, most = 100_000)
            List<WatchedUnit> units,

            @Asked(
                    value = Shapes.LEVEL,
                    from = Shapes.LEAST_LEVEL,
                    to = Shapes.GREATEST_LEVEL,
                    usual = Shapes.USUAL_LEVEL)
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

            @Asked(value = "hours down", unit = "h", from = 0, to = Shapes.LONGEST_H)
            double downHours,

            @Asked(value = "of these until it was found", unit = "h", from = 0, to = Shapes.LONGEST_H) @Nullable
            Double detectionHours,

            @Asked(value = "of these hands-on", unit = "h", from = 0, to = Shapes.LONGEST_H) @Nullable
            Double activeRepairHours) {}

    /** One unit over the period. */
    record UnitRecord(
            @Asked(value = "calendar hours in which it was wanted", unit = "h", from = 0, to = Shapes.LONGEST_H)
            double requiredHours,

            @Asked(value = "hours run", unit = "h", from = 0, to = Shapes.LONGEST_H)
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
