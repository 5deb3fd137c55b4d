package freshet.reliability;

import org.jspecify.annotations.Nullable;

/**
 * Mean time between failures at a constant rate, with exact bounds.
 *
 * <p>NIST/SEMATECH e-Handbook 8.4.5.1: lower 2T/χ²(2r + 2) for a record ended by time, 2T/χ²(2r) for one ended by a failure, upper 2T/χ²(2r).
 * With no failure only a lower bound exists, T/(-ln(1 - level)).
 *
 * @param mtbfHours null with no failure
 * @param lowerOneSided at the level asked
 * @param upperOneSided at the level asked; null with no failure
 * @param interval two-sided; its upper end is null with no failure
 */
public record Mtbf(
        @Nullable Double mtbfHours,
        double lowerOneSided,
        @Nullable Double upperOneSided,
        Interval interval) {

    /** Most failures in one record. */
    public static final int MOST_FAILURES = 1_000_000;

    /**
     * Bounds the mean time between failures.
     *
     * @param totalHours of all units together, 1e-6 to 1e12 h
     * @param failures 0 to 1 000 000; at least 1 when a failure ended the record
     * @param level of confidence, 0.5 to 0.999999
     * @throws OutOfRange for a number outside its range
     */
    public static Mtbf of(double totalHours, int failures, Termination termination, double level) {
        Limits.within("totalHours", totalHours, Limits.SHORTEST_HOURS, 1e12, "h");
        Limits.given("termination", termination);
        Limits.within("failures", failures, termination == Termination.FAILURE ? 1 : 0, MOST_FAILURES, "failures");
        Limits.level(level);
        double df = 2.0 * failures + (termination == Termination.TIME ? 2 : 0);
        double half = (1 - level) / 2;
        return new Mtbf(
                failures == 0 ? null : (Double) (totalHours / failures),
                lower(totalHours, df, 1 - level),
                upper(totalHours, failures, 1 - level),
                new Interval(lower(totalHours, df, half), upper(totalHours, failures, half)));
    }

    private static double lower(double totalHours, double df, double outside) {
        return 2 * totalHours / Quantiles.chiSquareAbove(outside, df);
    }

    private static @Nullable Double upper(double totalHours, int failures, double outside) {
        return failures == 0 ? null : (Double) (2 * totalHours / Quantiles.chiSquareBelow(outside, 2.0 * failures));
    }
}
