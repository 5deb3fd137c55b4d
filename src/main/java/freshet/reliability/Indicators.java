package freshet.reliability;

import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Maintenance indicators of a fleet, as ratios of totals over all its units.
 *
 * <p>After IEC 60050-192, EN 13306, EN 15341 and ISO 14224, whose own texts were not read; each figure is defined here, and the definition belongs
 * beside the figure wherever it is shown. Planned work inside required time counts as down.
 *
 * @param mtbfOperatingHours operating hours per failure; null without failures
 * @param metbfCalendarHours required hours per failure
 * @param meanDownHours failure to restored, detection and waiting included
 * @param meanRepairHours the same less detection, over failures that state their detection
 * @param meanActiveRepairHours hands-on hours, over failures that state them
 * @param availabilityTimeBased (required - all down)/required
 * @param availabilityRestoration operating/(operating + down by failure)
 * @param mtbfLowerOneSided95 lower 95 % bound of the operating hours per failure at a constant rate; also without failures
 */
public record Indicators(
        int failures,
        @Nullable Double mtbfOperatingHours,
        @Nullable Double metbfCalendarHours,
        @Nullable Double meanDownHours,
        @Nullable Double meanRepairHours,
        @Nullable Double meanActiveRepairHours,
        @Nullable Double availabilityTimeBased,
        @Nullable Double availabilityRestoration,
        @Nullable Double mtbfLowerOneSided95) {

    /** Why a unit was down. */
    public enum DownType {
        FAILURE,
        PREVENTIVE
    }

    /**
     * One time down.
     *
     * @param downHours 0 to 1e9 h
     * @param detectionHours of these until it was found, or null when not recorded
     * @param activeRepairHours of these hands-on, or null when not recorded
     */
    public record Down(
            DownType type,
            double downHours,
            @Nullable Double detectionHours,
            @Nullable Double activeRepairHours) {}

    /**
     * One unit over the period.
     *
     * @param requiredHours calendar hours in which it was wanted, 0 to 1e9 h
     * @param operatingHours hours run, 0 to 1e9 h
     * @param downs inside the required hours, not more than these together
     */
    public record UnitRecord(double requiredHours, double operatingHours, List<Down> downs) {}

    private static final int MOST_UNITS = 100_000;
    private static final double ROUNDING = 1e-9;

    /**
     * Computes the indicators.
     *
     * @param units 1 to 100 000, each with at most 100 000 times down
     * @throws OutOfRange for a number outside its range
     */
    public static Indicators of(List<UnitRecord> units) {
        List<UnitRecord> fleet = Limits.list("units", units, 1, MOST_UNITS);
        for (int i = 0; i < fleet.size(); i++) {
            check("units[" + i + "]", fleet.get(i));
        }
        double required = fleet.stream().mapToDouble(UnitRecord::requiredHours).sum();
        double operating =
                fleet.stream().mapToDouble(UnitRecord::operatingHours).sum();
        List<Down> downs = fleet.stream().flatMap(unit -> unit.downs.stream()).toList();
        List<Down> failed =
                downs.stream().filter(down -> down.type == DownType.FAILURE).toList();
        double allDown = downs.stream().mapToDouble(Down::downHours).sum();
        double failureDown = failed.stream().mapToDouble(Down::downHours).sum();
        int failures = failed.size();
        boolean ran = operating >= Limits.SHORTEST_HOURS;
        return new Indicators(
                failures,
                ran ? ratio(operating, failures) : null,
                required > 0 ? ratio(required, failures) : null,
                ratio(failureDown, failures),
                mean(failed, down -> down.detectionHours == null ? null : down.downHours - down.detectionHours),
                mean(failed, Down::activeRepairHours),
                ratio(Math.max(0, required - allDown), required),
                ratio(operating, operating + failureDown),
                ran ? lower95(operating, failures) : null);
    }

    private static void check(String field, UnitRecord unit) {
        Limits.hours(field + ".requiredHours", unit.requiredHours);
        Limits.hours(field + ".operatingHours", unit.operatingHours);
        List<Down> downs = Limits.list(field + ".downs", unit.downs, 0, MOST_UNITS);
        double sum = 0;
        for (int j = 0; j < downs.size(); j++) {
            String path = field + ".downs[" + j + "]";
            Down down = downs.get(j);
            Limits.given(path + ".type", down.type);
            sum += Limits.hours(path + ".downHours", down.downHours);
            checkPart(path + ".detectionHours", down.detectionHours, down.downHours);
            checkPart(path + ".activeRepairHours", down.activeRepairHours, down.downHours);
        }
        if (sum > unit.requiredHours * (1 + ROUNDING)) {
            throw new OutOfRange(
                    field + ".downs",
                    Limits.withUnit(sum, "h") + " down together is more than the unit's required "
                            + Limits.withUnit(unit.requiredHours, "h"));
        }
    }

    private static void checkPart(String field, @Nullable Double part, double downHours) {
        if (part != null) {
            Limits.upTo(field, part, 0, downHours, "h", "the hours down");
        }
    }

    private static @Nullable Double ratio(double numerator, double denominator) {
        return denominator > 0 ? Limits.finite(numerator / denominator) : null;
    }

    private static @Nullable Double mean(List<Down> downs, Function<Down, @Nullable Double> hours) {
        double sum = 0;
        int known = 0;
        for (Down down : downs) {
            Double value = hours.apply(down);
            if (value != null) {
                sum += value;
                known++;
            }
        }
        return ratio(sum, known);
    }

    private static double lower95(double operatingHours, int failures) {
        return 2 * operatingHours / Quantiles.chiSquareAbove(0.05, 2.0 * failures + 2);
    }
}
