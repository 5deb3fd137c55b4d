package freshet.reliability;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * A line that single wild readings cannot turn: the median of the slopes of all pairs (Theil, Sen).
 *
 * <p>Sen, J. American Statistical Association 63 (1968) 1379-1389 (general knowledge, not re-read): pairs of equal x are dropped; the variance of
 * Kendall's sum is corrected for ties; ranks of the limits are rounded half to even and held inside the list of slopes. The intercept is the
 * median of y - slope x.
 *
 * @param slopePerHour per hour
 * @param intercept at hour 0
 * @param slopeInterval two-sided, by the normal approximation; null with fewer than three readings
 */
public record RobustLine(
        double slopePerHour, double intercept, @Nullable Interval slopeInterval) {

    private static final int DIGIT_BITS = 11;

    /** The line through points sorted by x, or null when all x are equal. The slopes are counted, not kept: memory stays small for any n. */
    static @Nullable RobustLine through(double[] x, double[] y, double level) {
        int n = x.length;
        long pairs = pairs(x);
        if (pairs == 0) {
            return null;
        }
        long low = (pairs - 1) / 2;
        long high = pairs / 2;
        if (n < 3) {
            return of(x, y, slopesAt(x, y, low)[0], null);
        }
        double variance = ((double) n * (n - 1) * (2.0 * n + 5) - ties(x) - ties(y)) / 18;
        double c = Quantiles.normalTwoSided(level) * Math.sqrt(Math.max(0, variance));
        long lower = (long) Math.max(Math.rint((pairs - c) / 2) - 1, 0);
        long upper = (long) Math.min(Math.rint((pairs + c) / 2), pairs - 1.0);
        double[] slopes = slopesAt(x, y, low, high, lower, upper);
        double slope = slopes[0] + (slopes[1] - slopes[0]) / 2;
        return of(x, y, slope, Interval.of(slopes[2], slopes[3]));
    }

    private static @Nullable RobustLine of(double[] x, double[] y, double slope, @Nullable Interval slopes) {
        double intercept = medianIntercept(x, y, slope);
        return Double.isFinite(slope) && Double.isFinite(intercept) ? new RobustLine(slope, intercept, slopes) : null;
    }

    private static double medianIntercept(double[] x, double[] y, double slope) {
        double[] residuals = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            residuals[i] = y[i] - slope * x[i];
        }
        Arrays.sort(residuals);
        int middle = residuals.length / 2;
        return residuals.length % 2 == 1 ? residuals[middle] : (residuals[middle - 1] + residuals[middle]) / 2;
    }

    private static long pairs(double[] x) {
        long pairs = (long) x.length * (x.length - 1) / 2;
        for (int start = 0, end; start < x.length; start = end) {
            end = endOfTie(x, start);
            pairs -= (long) (end - start) * (end - start - 1) / 2;
        }
        return pairs;
    }

    private static double ties(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        double sum = 0;
        for (int start = 0, end; start < sorted.length; start = end) {
            end = endOfTie(sorted, start);
            double k = end - start;
            sum += k * (k - 1) * (2 * k + 5);
        }
        return sum;
    }

    private static int endOfTie(double[] sorted, int start) {
        int end = start + 1;
        while (end < sorted.length && sorted[end] == sorted[start]) {
            end++;
        }
        return end;
    }

    /** The slopes of given 0-based ranks, exactly, by counting the leading bits of all slopes and then the next ones of those that agree. */
    private static double[] slopesAt(double[] x, double[] y, long... ranks) {
        long[] prefixes = new long[ranks.length];
        long[] left = ranks.clone();
        for (int shift = 64 - DIGIT_BITS; ; shift = Math.max(0, shift - DIGIT_BITS)) {
            int bits = shift == 0 ? 64 % DIGIT_BITS : DIGIT_BITS;
            int[][] counts = count(x, y, prefixes, shift, bits);
            for (int r = 0; r < ranks.length; r++) {
                int digit = 0;
                while (left[r] >= counts[r][digit]) {
                    left[r] -= counts[r][digit++];
                }
                prefixes[r] = prefixes[r] << bits | digit;
            }
            if (shift == 0) {
                return Arrays.stream(prefixes).mapToDouble(RobustLine::fromKey).toArray();
            }
        }
    }

    private static int[][] count(double[] x, double[] y, long[] prefixes, int shift, int bits) {
        int[][] counts = new int[prefixes.length][1 << bits];
        long mask = (1L << bits) - 1;
        boolean first = shift + bits == 64;
        for (int i = 0; i < x.length; i++) {
            for (int j = i + 1; j < x.length; j++) {
                if (x[j] > x[i]) {
                    long key = toKey((y[j] - y[i]) / (x[j] - x[i]));
                    long prefix = first ? 0 : key >>> (shift + bits);
                    int digit = (int) (key >>> shift & mask);
                    for (int r = 0; r < prefixes.length; r++) {
                        if (prefix == prefixes[r]) {
                            counts[r][digit]++;
                        }
                    }
                }
            }
        }
        return counts;
    }

    /** A whole number that sorts, as an unsigned one, like the double it stands for. */
    private static long toKey(double value) {
        long bits = Double.doubleToRawLongBits(value + 0.0);
        return bits < 0 ? ~bits : bits ^ Long.MIN_VALUE;
    }

    private static double fromKey(long key) {
        return Double.longBitsToDouble(key < 0 ? key ^ Long.MIN_VALUE : ~key);
    }
}
