package freshet.hydraulics;

/**
 * Darcy friction factor of a round pipe running full.
 *
 * <p>Below Re 2000 laminar, 64/Re. Above Re 4000 the exact root of Colebrook, J. Inst. Civ. Eng. 11 (1939) 133:
 * 1/sqrt f = -2 log10(e/(3.7 d) + 2.51/(Re sqrt f)). Between them, where no law holds, a cubic in ln f over ln Re that meets
 * value and slope at both ends; its logarithmic slope never falls below -1.3, so the head loss f Re² rises strictly with the
 * flow everywhere and a duty point is unique.
 */
public final class FrictionFactor {

    /** Lowest Reynolds number answered. */
    public static final double LOWEST_REYNOLDS = 1e-6;
    /** Highest Reynolds number answered. */
    public static final double HIGHEST_REYNOLDS = 1e12;
    /** Highest relative roughness answered; Colebrook's own data end at 0.05. */
    public static final double HIGHEST_ROUGHNESS = 0.5;

    static final double LAMINAR_END = 2000;
    static final double TURBULENT_START = 4000;

    private static final double TWO_BY_LN_10 = 2 / Math.log(10);

    private FrictionFactor() {}

    /**
     * Darcy friction factor.
     *
     * @param reynolds Reynolds number, 1e-6 to 1e12
     * @param relativeRoughness roughness over bore, 0 to 0.5
     * @throws OutOfRange outside these ranges
     */
    public static double of(double reynolds, double relativeRoughness) {
        OutOfRange.check("reynolds", reynolds, "", LOWEST_REYNOLDS, HIGHEST_REYNOLDS);
        OutOfRange.check("relativeRoughness", relativeRoughness, "", 0, HIGHEST_ROUGHNESS);
        return at(reynolds, relativeRoughness);
    }

    /** The factor without checks; {@code reynolds} above 0. */
    static double at(double reynolds, double roughness) {
        if (reynolds < LAMINAR_END) {
            return 64 / reynolds;
        }
        return reynolds < TURBULENT_START ? bridge(reynolds, roughness) : colebrook(reynolds, roughness);
    }

    /** d ln f / d ln Re at a point whose factor is already known. */
    static double logSlope(double reynolds, double roughness, double factor) {
        if (reynolds < LAMINAR_END) {
            return -1;
        }
        return reynolds < TURBULENT_START
                ? bridgeLogSlope(reynolds, roughness)
                : colebrookLogSlope(reynolds, roughness, factor);
    }

    /**
     * With x = 1/sqrt f, Halley's third-order steps on x + (2/ln 10) ln(e/3.7d + 2.51 x/Re) = 0. One substitution from x = 7
     * starts within 20 %; two steps then reach the last digit, and the loop has an end in any case.
     */
    private static double colebrook(double reynolds, double roughness) {
        double a = roughness / 3.7;
        double b = 2.51 / reynolds;
        double x = -TWO_BY_LN_10 * Math.log(a + 7 * b);
        for (int i = 0; i < 8; i++) {
            double sum = a + b * x;
            double value = x + TWO_BY_LN_10 * Math.log(sum);
            double ratio = b / sum;
            double slope = 1 + TWO_BY_LN_10 * ratio;
            double bend = -TWO_BY_LN_10 * ratio * ratio;
            double step = value * slope / (slope * slope - 0.5 * value * bend);
            x -= step;
            if (Math.abs(step) <= 1e-5 * x) {
                break; // the next step would be of the order of this one cubed
            }
        }
        return 1 / (x * x);
    }

    private static double colebrookLogSlope(double reynolds, double roughness, double factor) {
        double x = 1 / Math.sqrt(factor);
        double viscous = 2.51 * x / reynolds;
        double share = TWO_BY_LN_10 * viscous / (roughness / 3.7 + viscous);
        return -2 * share / (x + share);
    }

    private static double bridge(double reynolds, double roughness) {
        double end = colebrook(TURBULENT_START, roughness);
        double slope = colebrookLogSlope(TURBULENT_START, roughness, end) * LN_SPAN;
        double t = Math.log(reynolds / LAMINAR_END) / LN_SPAN;
        double rise = Math.log(end / LAMINAR_FACTOR);
        double lnRatio = t * (-LN_SPAN + t * (3 * rise + 2 * LN_SPAN - slope + t * (slope - LN_SPAN - 2 * rise)));
        return LAMINAR_FACTOR * Math.exp(lnRatio);
    }

    private static double bridgeLogSlope(double reynolds, double roughness) {
        double end = colebrook(TURBULENT_START, roughness);
        double slope = colebrookLogSlope(TURBULENT_START, roughness, end) * LN_SPAN;
        double t = Math.log(reynolds / LAMINAR_END) / LN_SPAN;
        double rise = Math.log(end / LAMINAR_FACTOR);
        double dt = -LN_SPAN + t * (2 * (3 * rise + 2 * LN_SPAN - slope) + 3 * t * (slope - LN_SPAN - 2 * rise));
        return dt / LN_SPAN;
    }

    private static final double LN_SPAN = Math.log(TURBULENT_START / LAMINAR_END);
    private static final double LAMINAR_FACTOR = 64 / LAMINAR_END;
}
