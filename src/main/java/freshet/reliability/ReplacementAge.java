package freshet.reliability;

import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.hipparchus.special.Gamma;
import org.jspecify.annotations.Nullable;

/**
 * At what age to renew a part before it fails, by the long-run cost per hour.
 *
 * <p>C(T) = (planned·R(T) + failure·(1 - R(T)))/∫₀ᵀR for a Weibull life R (Barlow and Hunter, Operations Research 8, 1960; general knowledge, not
 * re-read): no time for the renewal itself, no discounting. Running to failure is best when the shape is at most 1 or a failure costs no more; it is
 * also the answer when the best age lies so far out (R below 1e-16) that the cost is the same to the last digit.
 *
 * @param optimumHours null when running to failure is best
 * @param costRate per hour under the policy
 * @param costRateRunToFailure per hour
 * @param savingFraction 1 - costRate/costRateRunToFailure
 */
public record ReplacementAge(
        Policy policy,
        @Nullable Double optimumHours,
        double costRate,
        double costRateRunToFailure,
        double savingFraction) {

    /** What to do. */
    public enum Policy {
        REPLACE_AT_AGE,
        RUN_TO_FAILURE
    }

    /** -ln 1e-16: beyond this cumulative hazard nobody is left to be replaced. */
    private static final double MOST_HAZARD = 36.8;

    /**
     * Finds the best age.
     *
     * @param shape 0.01 to 1e9
     * @param scaleHours 1e-6 to 1e9 h
     * @param plannedCost of a renewal in time, 1e-6 to 1e12 in any money
     * @param failureCost whole cost of one after a failure, 1e-6 to 1e12 in the same money
     * @throws OutOfRange for a number outside its range
     */
    public static ReplacementAge of(double shape, double scaleHours, double plannedCost, double failureCost) {
        Survival.checkLaw(shape, scaleHours);
        Limits.within("plannedCost", plannedCost, 1e-6, 1e12, "");
        Limits.within("failureCost", failureCost, 1e-6, 1e12, "");
        double runToFailure = failureCost / Survival.meanHours(shape, scaleHours);
        ReplacementAge never = new ReplacementAge(Policy.RUN_TO_FAILURE, null, runToFailure, runToFailure, 0);
        if (shape <= 1 || failureCost <= plannedCost) {
            return never;
        }
        double ratio = plannedCost / (failureCost - plannedCost);
        // the criterion grows with the hazard and is at most shape × hazard
        double low = ratio / shape;
        if (low >= MOST_HAZARD || criterion(shape, MOST_HAZARD) <= ratio) {
            return never;
        }
        double hazard = Math.exp(new BracketingNthOrderBrentSolver(1e-14, 1e-13, 1e-300, 5)
                .solve(500, log -> criterion(shape, Math.exp(log)) - ratio, Math.log(low) - 1, Math.log(MOST_HAZARD)));
        double failed = -Math.expm1(-hazard);
        double cycle = scaleHours * meanShare(shape, hazard);
        double costRate = (plannedCost + (failureCost - plannedCost) * failed) / cycle;
        if (!(costRate < runToFailure)) {
            return never;
        }
        double optimum = scaleHours * Math.pow(hazard, 1 / shape);
        return new ReplacementAge(Policy.REPLACE_AT_AGE, optimum, costRate, runToFailure, 1 - costRate / runToFailure);
    }

    /** h(T)∫R - (1 - R(T)), which equals planned/(failure - planned) at the best age, by the cumulative hazard (T/scale)^shape. */
    private static double criterion(double shape, double hazard) {
        return shape * Math.pow(hazard, 1 - 1 / shape) * meanShare(shape, hazard) + Math.expm1(-hazard);
    }

    /** ∫₀ᵀR as a share of the scale. */
    private static double meanShare(double shape, double hazard) {
        return Gamma.gamma(1 + 1 / shape) * Gamma.regularizedGammaP(1 / shape, hazard);
    }
}
