package freshet.reliability;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A Weibull law S(t) = exp(-(t/scale)^shape) of largest likelihood for lives with right censoring and late entry.
 *
 * <p>Standard errors come from the observed information in (ln scale, ln shape), intervals are Wald on those scales, b10 by the delta method.
 * Lawless, Statistical Models and Methods for Lifetime Data (2nd edition), chapter 5 (general knowledge, not re-read). No bias correction.
 *
 * @param status whether there is a fit; all else is null without one
 * @param scaleHours age by which 63.2 % have failed
 * @param b10Hours age by which 10 % have failed
 * @param logLikelihood sum of ln f and ln S, hours as unit, given survival to entry
 */
public record WeibullFit(
        Status status,
        @Nullable Double shape,
        @Nullable Double scaleHours,
        @Nullable Double seShape,
        @Nullable Double seScale,
        @Nullable Interval shapeInterval,
        @Nullable Interval scaleInterval,
        @Nullable Double b10Hours,
        @Nullable Interval b10Interval,
        @Nullable Double meanHours,
        @Nullable Double logLikelihood) {

    /** Whether the lives determine a law. */
    public enum Status {
        OK,
        NO_FAILURES,
        /** The likelihood has no peak: every failure at the longest hours of all, a failure at 0 h, or entries too late to tell. */
        NOT_ESTIMABLE
    }

    private static final double LOG_OF_B10 = Math.log(-Math.log(0.9));

    static WeibullFit of(List<Lives.Life> lives, double level) {
        int failures = 0;
        double longest = 0;
        double shortestFailure = Double.POSITIVE_INFINITY;
        for (Lives.Life life : lives) {
            longest = Math.max(longest, life.hours());
            if (life.failed()) {
                failures++;
                shortestFailure = Math.min(shortestFailure, life.hours());
            }
        }
        if (failures == 0) {
            return without(Status.NO_FAILURES);
        }
        if (shortestFailure == 0) {
            return without(Status.NOT_ESTIMABLE);
        }
        return of(new Sample(lives, failures, longest), level);
    }

    private static WeibullFit of(Sample sample, double level) {
        ProfileEquation equation = new ProfileEquation(sample.logT, sample.logE, sample.meanLog);
        Double found = equation.shape();
        if (found == null) {
            return without(Status.NOT_ESTIMABLE);
        }
        double k = found;
        int r = sample.failures;
        double logShare = Math.log(equation.sum(k) / r) / k;
        double logScale = Math.log(sample.longest) + logShare;
        double scale = Math.exp(logScale);
        double logLikelihood = r * (Math.log(k) - logScale + (k - 1) * (sample.meanLog - logShare) - 1);
        if (!Double.isFinite(scale) || !Double.isFinite(logLikelihood)) {
            return without(Status.NOT_ESTIMABLE);
        }
        double logB10 = LOG_OF_B10 / k;
        Double b10 = Limits.finite(Math.exp(logScale + logB10));
        Double mean = Limits.finite(Survival.meanHours(k, scale));
        double[] moments = sample.moments(k, logShare);
        // information k² r, -k moments[0], r + moments[1] in (ln scale, ln shape)
        double determinant = k * k * (r * (r + moments[1]) - moments[0] * moments[0]);
        if (!(determinant > 0) || !Double.isFinite(determinant)) {
            return new WeibullFit(Status.OK, k, scale, null, null, null, null, b10, null, mean, logLikelihood);
        }
        double varLogScale = (r + moments[1]) / determinant;
        double varLogShape = k * k * r / determinant;
        double covariance = k * moments[0] / determinant;
        double varLogB10 = varLogScale - 2 * logB10 * covariance + logB10 * logB10 * varLogShape;
        double z = Quantiles.normalTwoSided(level);
        return new WeibullFit(
                Status.OK,
                k,
                scale,
                Limits.finite(k * Math.sqrt(varLogShape)),
                Limits.finite(scale * Math.sqrt(varLogScale)),
                Interval.aroundLogarithm(k, z * Math.sqrt(varLogShape)),
                Interval.aroundLogarithm(scale, z * Math.sqrt(varLogScale)),
                b10,
                b10 == null ? null : Interval.aroundLogarithm(b10, z * Math.sqrt(Math.max(0, varLogB10))),
                mean,
                logLikelihood);
    }

    private static WeibullFit without(Status status) {
        return new WeibullFit(status, null, null, null, null, null, null, null, null, null, null);
    }

    /** The lives as logarithms of their share of the longest. */
    private static final class Sample {

        private final int failures;
        private final double longest;
        private final double[] logT;
        private final double[] logE;
        private final double meanLog;

        Sample(List<Lives.Life> lives, int failures, double longest) {
            List<Lives.Life> run =
                    lives.stream().filter(life -> life.hours() > 0).toList();
            this.failures = failures;
            this.longest = longest;
            this.logT = new double[run.size()];
            this.logE = new double[run.size()];
            double sum = 0;
            for (int i = 0; i < logT.length; i++) {
                Lives.Life life = run.get(i);
                logT[i] = ProfileEquation.logShare(life.hours(), longest);
                Double entry = life.entryHours();
                logE[i] = entry == null || entry == 0
                        ? Double.NEGATIVE_INFINITY
                        : ProfileEquation.logShare(entry, longest);
                sum += life.failed() ? logT[i] : 0;
            }
            this.meanLog = sum / failures;
        }

        /** Σ z e^z and Σ z² e^z over lives less the same over entries, z = shape ln(t/scale). */
        double[] moments(double k, double logShare) {
            double first = 0;
            double second = 0;
            for (int i = 0; i < logT.length; i++) {
                double z = k * (logT[i] - logShare);
                double ez = Math.exp(z);
                first += z * ez;
                second += z * z * ez;
                if (logE[i] != Double.NEGATIVE_INFINITY) {
                    double y = k * (logE[i] - logShare);
                    double ey = Math.exp(y);
                    first -= y * ey;
                    second -= y * y * ey;
                }
            }
            return new double[] {first, second};
        }
    }
}
