package freshet.reliability;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Whether failures of one repaired unit come faster or slower with its hours: a power-law process of intensity scale·shape·t^(shape-1).
 *
 * <p>NIST/SEMATECH e-Handbook 8.4.5.2 and MIL-HDBK-189 (general knowledge, not re-read). With n failures, S = Σ ln(T/t) and m = n for a record ended
 * by time, n - 1 for one ended by its last failure: shape n/S, unbiased (m - 1)/S, interval shape·χ²(2m)/(2n), test χ² = 2 S on 2m degrees of
 * freedom, Laplace's u over the first m failures.
 *
 * @param shape below 1 improving, above 1 worsening
 * @param scale expected failures in the first hour
 * @param intensityAtEnd failures per hour
 * @param chiSquare large when improving
 * @param laplace standard normal without trend, negative when improving
 */
public record FailureTrend(
        @Nullable Double shape,
        @Nullable Double scale,
        @Nullable Double shapeUnbiased,
        @Nullable Double intensityAtEnd,
        @Nullable Double mtbfAtEnd,
        @Nullable Interval shapeInterval,
        @Nullable Double chiSquare,
        @Nullable Integer chiSquareDf,
        @Nullable Double laplace) {

    private static final FailureTrend UNKNOWN = new FailureTrend(null, null, null, null, null, null, null, null, null);

    /**
     * Fits the process.
     *
     * @param eventHours 0 to 1 000 000 failures, 1e-6 h to endHours each, in any order
     * @param endHours 1e-6 to 1e9 h; the last failure when a failure ended the record
     * @param level of confidence of the interval, 0.5 to 0.999999
     * @throws OutOfRange for a number outside its range
     */
    public static FailureTrend of(List<Double> eventHours, double endHours, Termination termination, double level) {
        Limits.within("endHours", endHours, Limits.SHORTEST_HOURS, Limits.LONGEST_HOURS, "h");
        Limits.level(level);
        List<Double> events = Limits.list("eventHours", eventHours, 0, Mtbf.MOST_FAILURES);
        double logs = 0;
        double sum = 0;
        double last = 0;
        for (int i = 0; i < events.size(); i++) {
            double hours = Limits.upTo(
                    "eventHours[" + i + "]", events.get(i), Limits.SHORTEST_HOURS, endHours, "h", "the end");
            logs -= ProfileEquation.logShare(hours, endHours);
            sum += hours;
            last = Math.max(last, hours);
        }
        boolean byFailure = Limits.given("termination", termination) == Termination.FAILURE;
        if (byFailure && last != endHours) {
            throw new OutOfRange(
                    "endHours",
                    Limits.withUnit(endHours, "h") + " is not the last failure's " + Limits.withUnit(last, "h")
                            + ", though a failure ended the record");
        }
        int n = events.size();
        int m = byFailure ? n - 1 : n;
        if (m < 1) {
            return UNKNOWN;
        }
        double earlier = byFailure ? sum - endHours : sum;
        double laplace = (earlier / m - endHours / 2) / (endHours / Math.sqrt(12.0 * m));
        if (!(logs > 0)) {
            // every failure at the very end: the shape has no upper limit
            return new FailureTrend(null, null, null, null, null, null, null, null, laplace);
        }
        double shape = n / logs;
        double outside = (1 - level) / 2;
        return new FailureTrend(
                shape,
                notZero(n * Math.exp(-shape * Math.log(endHours))),
                notZero((m - 1) / logs),
                shape * n / endHours,
                endHours / (shape * n),
                Interval.of(
                        shape * Quantiles.chiSquareBelow(outside, 2.0 * m) / (2.0 * n),
                        shape * Quantiles.chiSquareAbove(outside, 2.0 * m) / (2.0 * n)),
                2 * logs,
                2 * m,
                laplace);
    }

    private static @Nullable Double notZero(double value) {
        return value == 0 ? null : Limits.finite(value);
    }
}
