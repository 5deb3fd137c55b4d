package freshet.hydraulics;

import org.hipparchus.distribution.continuous.TDistribution;

/**
 * The few rules of JCGM 100:2008 (the GUM) that field instruments need: standard uncertainties from marks and certificates,
 * and the coverage factor when a part of the uncertainty comes from few repeats.
 */
public final class Uncertainty {

    private static final double LARGEST = 1e9;
    /** 97.5 % point of the normal distribution. */
    private static final double NORMAL_95 = 1.959963984540054;

    private Uncertainty() {}

    /** Standard uncertainty of a value that lies anywhere within ±{@code halfWidth}; GUM 4.3.7. */
    public static double rectangular(double halfWidth) {
        return OutOfRange.check("halfWidth", halfWidth, "", 0, LARGEST) / Math.sqrt(3);
    }

    /** Standard uncertainty of a value within ±{@code halfWidth} and likeliest in the middle; GUM 4.3.9. */
    public static double triangular(double halfWidth) {
        return OutOfRange.check("halfWidth", halfWidth, "", 0, LARGEST) / Math.sqrt(6);
    }

    /** Standard uncertainty from a stated 95 % half-width of a normal error; GUM 4.3.4 (divisor 1.96, here with all its digits). */
    public static double fromStated95(double halfWidth) {
        return OutOfRange.check("halfWidth", halfWidth, "", 0, LARGEST) / NORMAL_95;
    }

    /**
     * Effective degrees of freedom by Welch and Satterthwaite, GUM G.4.1: u⁴ / sum(u_i⁴/nu_i).
     *
     * @param combined combined standard uncertainty, above 0
     * @param parts its parts that have finite degrees of freedom
     * @param degrees their degrees of freedom, each at least 1
     * @return the effective number; positive infinity when no part counts
     */
    public static double effectiveDegrees(double combined, double[] parts, double[] degrees) {
        OutOfRange.check("combined", combined, "", Double.MIN_NORMAL, LARGEST);
        double sum = 0;
        for (int i = 0; i < parts.length; i++) {
            OutOfRange.check("degrees[" + i + "]", degrees[i], "", 1, LARGEST);
            double share = OutOfRange.check("parts[" + i + "]", parts[i], "", 0, LARGEST) / combined;
            sum += share * share * share * share / degrees[i];
        }
        return 1 / sum;
    }

    /** Two-sided 95 % coverage factor: Student's t at 0.975; 1.96 for infinitely many degrees of freedom. */
    public static double coverageFactor95(double degrees) {
        OutOfRange.check("degrees", degrees, "", 1, Double.POSITIVE_INFINITY);
        return degrees > 1e6 ? NORMAL_95 : new TDistribution(degrees).inverseCumulativeProbability(0.975);
    }
}
