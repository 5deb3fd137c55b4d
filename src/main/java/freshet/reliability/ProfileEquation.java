package freshet.reliability;

import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.jspecify.annotations.Nullable;

/**
 * The equation 1/k + m = A'(k)/A(k), A(k) = Σ (t^k - e^k), whose root is the shape k of largest likelihood.
 *
 * <p>It serves lives with right censoring and late entry (t = hours, e = hours at entry, m = mean log hours of the failures) and pooled power-law
 * processes (t = end of each unit, m = mean log hours of the events). Times are logarithms of their share of the longest t, so nothing overflows.
 * Without late entry the root is single; with it every root is tried.
 */
final class ProfileEquation {

    private static final int MOST_DOUBLINGS = 64;
    private static final int HALVINGS_WITH_LATE_ENTRY = 12;
    private static final int DOUBLINGS_WITH_LATE_ENTRY = 12;

    private final double[] logT;
    private final double[] logE;
    private final boolean lateEntry;
    private final double meanLog;

    /**
     * Poses the equation.
     *
     * @param logT logarithms of t/longest, none above 0
     * @param logE logarithms of e/longest, negative infinity for none
     * @param meanLog m, below 0
     */
    ProfileEquation(double[] logT, double[] logE, double meanLog) {
        this.logT = logT;
        this.logE = logE;
        this.meanLog = meanLog;
        boolean late = false;
        for (double e : logE) {
            late |= e != Double.NEGATIVE_INFINITY;
        }
        this.lateEntry = late;
    }

    /** ln(hours/longest), exact even for hours within a hair of the longest. */
    static double logShare(double hours, double longest) {
        return hours > longest / 2 ? Math.log1p((hours - longest) / longest) : Math.log(hours / longest);
    }

    /** The shape, or null where the likelihood has no peak at a finite shape above 0. */
    @Nullable
    Double shape() {
        // when every event happened at the longest time the likelihood rises for ever
        if (!(meanLog < 0)) {
            return null;
        }
        double least = Math.log(-1 / meanLog);
        double low = least - (lateEntry ? HALVINGS_WITH_LATE_ENTRY : 1) * Math.log(2);
        Double best = null;
        double bestLikelihood = Double.NEGATIVE_INFINITY;
        double before = score(low);
        for (int i = 0; i < MOST_DOUBLINGS; i++) {
            double high = low + Math.log(2);
            double after = score(high);
            if (before >= 0 && after < 0) {
                double k = Math.exp(root(low, high));
                double likelihood = profile(k);
                if (best == null || likelihood > bestLikelihood) {
                    best = k;
                    bestLikelihood = likelihood;
                }
            }
            boolean scanned = !lateEntry || high > least + DOUBLINGS_WITH_LATE_ENTRY * Math.log(2);
            if (scanned && after < 0) {
                return best;
            }
            low = high;
            before = after;
        }
        return best;
    }

    /** A(k) with times as shares of the longest. */
    double sum(double k) {
        double sum = 0;
        for (int i = 0; i < logT.length; i++) {
            sum += Math.exp(k * logT[i]) * atRisk(k, i);
        }
        return sum;
    }

    /** 1 - (e/t)^k. */
    private double atRisk(double k, int i) {
        return lateEntry ? -Math.expm1(k * (logE[i] - logT[i])) : 1;
    }

    private double score(double logK) {
        double k = Math.exp(logK);
        double sum = 0;
        double slope = 0;
        for (int i = 0; i < logT.length; i++) {
            double power = Math.exp(k * logT[i]);
            double risk = atRisk(k, i);
            sum += power * risk;
            slope += power * logT[i];
            if (risk < 1) {
                slope -= power * (1 - risk) * logE[i];
            }
        }
        // times k, so that the scale of the equation does not depend on that of the lives
        return 1 + k * (meanLog - slope / sum);
    }

    private double root(double low, double high) {
        return new BracketingNthOrderBrentSolver(1e-15, 1e-14, 1e-16, 5).solve(500, this::score, low, high);
    }

    /** Log likelihood for each event, the scale being at its best, but for a constant. */
    private double profile(double k) {
        return Math.log(k) - Math.log(sum(k)) + (k - 1) * meanLog;
    }
}
