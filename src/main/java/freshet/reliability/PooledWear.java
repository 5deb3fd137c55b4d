package freshet.reliability;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Wear slopes of like units, each drawn towards the mean of all as far as its own readings are poor.
 *
 * <p>y ~ N(θ, v) with v the squared standard error, taken as known, and θ ~ N(mean, τ²); τ² by DerSimonian and Laird, Controlled Clinical Trials 7
 * (1986), equation for their moment estimator (general knowledge, not re-read). Standard errors of units include that of the mean.
 *
 * @param betweenUnitVariance τ², never negative; null with one unit
 * @param meanSlope per hour
 * @param units one for each slope asked, in its order
 */
public record PooledWear(
        @Nullable Double betweenUnitVariance, double meanSlope, double seMeanSlope, List<UnitSlope> units) {

    /** The slope that one unit's own readings gave, per run hour, with its standard error. */
    public record OwnSlope(double slopePerHour, double standardError) {}

    /**
     * The slope of one unit after pooling.
     *
     * @param weightOfMean v/(v + τ²): 0 = own slope kept, 1 = mean taken; null with one unit
     */
    public record UnitSlope(@Nullable Double weightOfMean, double slopePerHour, double standardError) {

        /**
         * Two-sided interval of the unit's slope by the normal law, per hour. It takes the standard errors that were pooled as known, and is too
         * narrow where these come from few readings.
         *
         * @param level of confidence, 0.5 to 0.999999
         */
        public @Nullable Interval interval(double level) {
            Limits.level(level);
            return Interval.around(slopePerHour, Quantiles.normalTwoSided(level) * standardError);
        }
    }

    /** The slope to expect of a like unit that has none of its own: the mean, with the spread between units; null with one unit. */
    public @Nullable UnitSlope ofAnother() {
        return betweenUnitVariance == null
                ? null
                : new UnitSlope(1.0, meanSlope, Math.sqrt(betweenUnitVariance + seMeanSlope * seMeanSlope));
    }

    /**
     * Pools the slopes.
     *
     * @param slopes 1 to 100 000; slope -1e3 to 1e3 per hour, standard error 1e-15 to 1e3 per hour
     * @throws OutOfRange for a number outside its range
     */
    public static PooledWear of(List<OwnSlope> slopes) {
        List<OwnSlope> own = checked(slopes);
        if (own.size() == 1) {
            OwnSlope only = own.get(0);
            UnitSlope kept = new UnitSlope(null, only.slopePerHour, only.standardError);
            return new PooledWear(null, only.slopePerHour, only.standardError, List.of(kept));
        }
        double[] y = own.stream().mapToDouble(OwnSlope::slopePerHour).toArray();
        double[] v = own.stream()
                .mapToDouble(slope -> slope.standardError * slope.standardError)
                .toArray();
        double tau2 = betweenUnitVariance(y, v);
        double sumW = sumOfWeights(v, tau2);
        double mean = weightedMean(y, v, tau2);
        List<UnitSlope> units = new ArrayList<>();
        for (int i = 0; i < y.length; i++) {
            double ofMean = v[i] / (v[i] + tau2);
            double se = Math.sqrt((1 - ofMean) * v[i] + ofMean * ofMean / sumW);
            units.add(new UnitSlope(ofMean, mean + (1 - ofMean) * (y[i] - mean), se));
        }
        return new PooledWear(tau2, mean, 1 / Math.sqrt(sumW), List.copyOf(units));
    }

    private static List<OwnSlope> checked(List<OwnSlope> slopes) {
        List<OwnSlope> checked = Limits.list("slopes", slopes, 1, 100_000);
        for (int i = 0; i < checked.size(); i++) {
            Limits.within("slopes[" + i + "].slopePerHour", checked.get(i).slopePerHour, -1e3, 1e3, "per hour");
            Limits.within("slopes[" + i + "].standardError", checked.get(i).standardError, 1e-15, 1e3, "per hour");
        }
        return checked;
    }

    private static double betweenUnitVariance(double[] y, double[] v) {
        double mean = weightedMean(y, v, 0);
        double sumW = sumOfWeights(v, 0);
        double q = 0;
        // Σw - Σw²/Σw as Σ w (Σw - w)/Σw, the bracket summed and never subtracted: one very sure unit would cancel it
        // to nothing
        double scale = 0;
        double before = 0;
        double[] after = new double[v.length + 1];
        for (int i = v.length - 1; i >= 0; i--) {
            after[i] = after[i + 1] + 1 / v[i];
        }
        for (int i = 0; i < v.length; i++) {
            double w = 1 / v[i];
            q += w * (y[i] - mean) * (y[i] - mean);
            scale += w / sumW * (before + after[i + 1]);
            before += w;
        }
        return Math.max(0, (q - (y.length - 1)) / scale);
    }

    private static double sumOfWeights(double[] v, double tau2) {
        double sum = 0;
        for (double variance : v) {
            sum += 1 / (variance + tau2);
        }
        return sum;
    }

    private static double weightedMean(double[] y, double[] v, double tau2) {
        double sum = 0;
        double sumW = 0;
        for (int i = 0; i < y.length; i++) {
            double w = 1 / (v[i] + tau2);
            sum += w * (y[i] - y[0]);
            sumW += w;
        }
        return y[0] + sum / sumW;
    }
}
