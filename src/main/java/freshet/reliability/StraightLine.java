package freshet.reliability;

import org.jspecify.annotations.Nullable;

/**
 * A straight line by (weighted) least squares: y = mean + slope (x - meanX), the variance of point i being s²/w.
 *
 * <p>All sums are taken about the first point and then about the weighted mean, so that points far from zero keep their digits. Seber and
 * Lee, Linear Regression Analysis (2nd edition), sections 6.1 and 3.10, general knowledge, not re-read.
 *
 * @param weight sum of the weights
 * @param sxx weighted sum of squares of x about its mean
 * @param residualSd null with fewer than three points
 * @param rSquared null where the points show no spread in y, or with fewer than three points
 */
record StraightLine(
        int n,
        double weight,
        double meanX,
        double meanY,
        double sxx,
        double slope,
        @Nullable Double residualSd,
        @Nullable Double rSquared) {

    /** The line, or null when fewer than two different x are given (x nearer than leastSpread count as the same). */
    static @Nullable StraightLine through(double[] x, double[] y, double[] w, double leastSpread) {
        int n = x.length;
        if (n < 2) {
            return null;
        }
        double sumW = 0;
        double sumX = 0;
        double sumY = 0;
        double spread = 0;
        for (int i = 0; i < n; i++) {
            sumW += w[i];
            sumX += w[i] * (x[i] - x[0]);
            sumY += w[i] * (y[i] - y[0]);
            spread = Math.max(spread, Math.abs(x[i] - x[0]));
        }
        if (spread < leastSpread) {
            return null;
        }
        double meanX = sumX / sumW;
        double meanY = sumY / sumW;
        double sxx = 0;
        double sxy = 0;
        double syy = 0;
        for (int i = 0; i < n; i++) {
            double dx = x[i] - x[0] - meanX;
            double dy = y[i] - y[0] - meanY;
            sxx += w[i] * dx * dx;
            sxy += w[i] * dx * dy;
            syy += w[i] * dy * dy;
        }
        double slope = sxy / sxx;
        double rss = 0;
        for (int i = 0; i < n; i++) {
            double r = y[i] - y[0] - meanY - slope * (x[i] - x[0] - meanX);
            rss += w[i] * r * r;
        }
        boolean errors = n > 2;
        return new StraightLine(
                n,
                sumW,
                x[0] + meanX,
                y[0] + meanY,
                sxx,
                slope,
                errors ? Limits.finite(Math.sqrt(rss / (n - 2))) : null,
                errors && syy > 0 ? (Double) Math.max(0, 1 - rss / syy) : null);
    }

    int df() {
        return n - 2;
    }

    double at(double x) {
        return meanY + slope * (x - meanX);
    }

    double intercept() {
        return meanY - slope * meanX;
    }

    @Nullable
    Double seSlope() {
        return residualSd == null ? null : (Double) (residualSd / Math.sqrt(sxx));
    }

    /** Standard error of the mean line at x; 0 gives that of the intercept. */
    @Nullable
    Double seAt(double x) {
        return residualSd == null ? null : (Double) (residualSd * Math.sqrt(varianceFactor(x)));
    }

    /** Standard deviation of the difference between the line and one further point of weight 1 at x. */
    @Nullable
    Double sdOfNextAt(double x) {
        return residualSd == null ? null : (Double) (residualSd * Math.sqrt(1 + varianceFactor(x)));
    }

    private double varianceFactor(double x) {
        double d = x - meanX;
        return 1 / weight + d * d / sxx;
    }
}
