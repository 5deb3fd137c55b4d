package freshet.reliability;

import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;

/** Points of the normal, Student and chi-square distributions, asked by the probability above them. */
final class Quantiles {

    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    private Quantiles() {}

    static double normalTwoSided(double level) {
        return NORMAL.inverseSurvivalProbability((1 - level) / 2);
    }

    static double studentTwoSided(double level, int df) {
        return TDistribution.of(df).inverseSurvivalProbability((1 - level) / 2);
    }

    static double studentOneSided(double level, int df) {
        return TDistribution.of(df).inverseSurvivalProbability(1 - level);
    }

    static double chiSquareAbove(double probabilityAbove, double df) {
        return ChiSquaredDistribution.of(df).inverseSurvivalProbability(probabilityAbove);
    }

    static double chiSquareBelow(double probabilityBelow, double df) {
        return ChiSquaredDistribution.of(df).inverseCumulativeProbability(probabilityBelow);
    }
}
