package freshet.reliability;

import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One power-law process common to a fleet whose units were watched for different times.
 *
 * <p>Pooled likelihood over all units, each ended by time; the standard error of the shape from the observed information in (shape, ln scale). Crow
 * 1974, MIL-HDBK-189 (general knowledge, not re-read). Nulls where the events do not determine a shape.
 *
 * @param events of all units
 * @param shape below 1 improving, above 1 worsening
 * @param scale expected failures of a unit in its first hour
 */
public record FleetFailureTrend(
        int units,
        int events,
        @Nullable Double shape,
        @Nullable Double scale,
        @Nullable Double seShape,
        @Nullable Double logLikelihood) {

    /**
     * Fits the process.
     *
     * @param units as for {@link Recurrence}, but each event at least 1e-6 h after new
     * @throws OutOfRange for a number outside its range
     */
    public static FleetFailureTrend of(List<Recurrence.WatchedUnit> units) {
        List<Recurrence.WatchedUnit> fleet = Recurrence.checked(units);
        double longest = fleet.stream()
                .mapToDouble(Recurrence.WatchedUnit::endHours)
                .max()
                .orElse(0);
        int events = 0;
        double sum = 0;
        for (int i = 0; i < fleet.size(); i++) {
            List<Double> hours = fleet.get(i).eventHours();
            for (int j = 0; j < hours.size(); j++) {
                String field = "units[" + i + "].eventHours[" + j + "]";
                Limits.within(field, hours.get(j), Limits.SHORTEST_HOURS, Limits.LONGEST_HOURS, "h");
                sum += ProfileEquation.logShare(hours.get(j), longest);
                events++;
            }
        }
        double[] logEnds = fleet.stream()
                .mapToDouble(Recurrence.WatchedUnit::endHours)
                .filter(end -> end > 0)
                .map(end -> ProfileEquation.logShare(end, longest))
                .toArray();
        Double shape = events == 0 ? null : new ProfileEquation(logEnds, none(logEnds), sum / events).shape();
        if (shape == null) {
            return new FleetFailureTrend(fleet.size(), events, null, null, null, null);
        }
        return of(fleet.size(), events, shape, sum, logEnds, Math.log(longest));
    }

    private static FleetFailureTrend of(
            int units, int events, double shape, double sumOfLogs, double[] logEnds, double logLongest) {
        double power = 0;
        double first = 0;
        double second = 0;
        for (double log : logEnds) {
            double share = Math.exp(shape * log);
            power += share;
            first += share * log;
            second += share * log * log;
        }
        double logScale = Math.log(events) - Math.log(power) - shape * logLongest;
        // the spread of ln T about its mean: taken about the longest end, its log drops out
        double spread = second / power - first / power * (first / power);
        double information = events * (1 / (shape * shape) + Math.max(0, spread));
        double logLikelihood =
                events * (logScale + Math.log(shape) - 1) + (shape - 1) * (sumOfLogs + events * logLongest);
        double scale = Math.exp(logScale);
        return new FleetFailureTrend(
                units,
                events,
                shape,
                scale == 0 ? null : Limits.finite(scale),
                Limits.finite(1 / Math.sqrt(information)),
                Limits.finite(logLikelihood));
    }

    private static double[] none(double[] logEnds) {
        double[] none = new double[logEnds.length];
        Arrays.fill(none, Double.NEGATIVE_INFINITY);
        return none;
    }

    /**
     * Two-sided interval of the shape, Wald on its logarithm; null without a standard error.
     *
     * @param level of confidence, 0.5 to 0.999999
     */
    public @Nullable Interval shapeInterval(double level) {
        Limits.level(level);
        return shape == null || seShape == null
                ? null
                : Interval.aroundLogarithm(shape, Quantiles.normalTwoSided(level) * seShape / shape);
    }

    /** Failures expected of a new unit by these hours, scale·hours^shape; null without a shape. Hours 0 to 1e9 h. */
    public @Nullable Double expectedEvents(double hours) {
        Limits.hours("hours", hours);
        return shape == null || scale == null ? null : Limits.finite(scale * Math.pow(hours, shape));
    }
}
