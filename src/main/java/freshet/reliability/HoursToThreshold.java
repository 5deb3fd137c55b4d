package freshet.reliability;

import org.jspecify.annotations.Nullable;

/**
 * When a falling line meets a threshold: the hours at which the mean line does, and the bounds at which its confidence bands do.
 *
 * <p>The bands are inverted exactly (Fieller, J. Royal Statistical Society B 16, 1954; general knowledge, not re-read), no delta method; there is
 * no limit to the extrapolation. With g = (t s)²/(slope² Sxx) below 1 both bands cross the threshold, otherwise only the lower one can.
 *
 * @param status null when two readings give a falling line that has no error of its own
 * @param estimate hours at which the mean line meets the threshold; null unless it falls
 * @param lowerOneSided hours at which the one-sided lower band of the mean does; null when it never does
 * @param interval all hours whose two-sided band of the mean holds the threshold; an unbounded end is null
 * @param lowerOneSidedNextReading the same as lowerOneSided for one further reading of weight 1; null also when already below
 * @param remainingEstimate hours from now to the estimate, never negative
 * @param remainingLower hours from now to lowerOneSided, never negative; 0 when the band is below the threshold already
 */
public record HoursToThreshold(
        @Nullable Status status,
        @Nullable Double estimate,
        @Nullable Double lowerOneSided,
        @Nullable Interval interval,
        @Nullable Double lowerOneSidedNextReading,
        @Nullable Double remainingEstimate,
        @Nullable Double remainingLower) {

    /** What the readings allow to be said about the crossing. */
    public enum Status {
        OK,
        LOWER_ONLY,
        NOT_DECLINING
    }

    static final HoursToThreshold UNKNOWN = new HoursToThreshold(null, null, null, null, null, null, null);

    static HoursToThreshold of(StraightLine line, double threshold, double nowHours, double level) {
        boolean falls = line.slope() < 0;
        Double estimate = falls ? Limits.finite(line.meanX() + (threshold - line.meanY()) / line.slope()) : null;
        Double remaining = remaining(estimate, nowHours);
        if (line.residualSd() == null) {
            return new HoursToThreshold(
                    falls ? null : Status.NOT_DECLINING, estimate, null, null, null, remaining, null);
        }
        double sd = line.residualSd();
        Band oneSided = new Band(line, threshold, sd * Quantiles.studentOneSided(level, line.df()), 0);
        Band twoSided = new Band(line, threshold, sd * Quantiles.studentTwoSided(level, line.df()), 0);
        Band next = new Band(line, threshold, oneSided.halfWidth, 1);
        Status status = !falls ? Status.NOT_DECLINING : oneSided.leading() > 0 ? Status.OK : Status.LOWER_ONLY;
        Double lower = oneSided.lowerCrossing();
        Double nearEnd = twoSided.lowerCrossing();
        Double farEnd = twoSided.upperCrossing();
        return new HoursToThreshold(
                status,
                estimate,
                lower,
                nearEnd == null && farEnd == null ? null : new Interval(nearEnd, farEnd),
                next.startsAbove() ? next.lowerCrossing() : null,
                remaining,
                lower == null && !oneSided.startsAbove() ? (Double) 0.0 : remaining(lower, nowHours));
    }

    private static @Nullable Double remaining(@Nullable Double hours, double nowHours) {
        return hours == null ? null : (Double) Math.max(0, hours - nowHours);
    }

    /**
     * The hyperbola c + b d ± halfWidth √(v + d²/Sxx) around the line, d counted from the mean of x and c from the threshold; its crossings of
     * zero solve leading d² + 2 b c d + constant = 0, each root taken in the form that loses no digits.
     */
    private static final class Band {

        private final double meanX;
        private final double b;
        private final double c;
        private final double sxx;
        private final double halfWidth;
        private final double v;

        Band(StraightLine line, double threshold, double halfWidth, double furtherReading) {
            this.meanX = line.meanX();
            this.b = line.slope();
            this.c = line.meanY() - threshold;
            this.sxx = line.sxx();
            this.halfWidth = halfWidth;
            this.v = furtherReading + 1 / line.weight();
        }

        /** b² (1 - g). */
        double leading() {
            double steepest = halfWidth / Math.sqrt(sxx);
            return (b - steepest) * (b + steepest);
        }

        private double constant() {
            double atMean = halfWidth * Math.sqrt(v);
            return (c - atMean) * (c + atMean);
        }

        private double rootOfDiscriminant() {
            return halfWidth * Math.sqrt(leading() * v + c * c / sxx);
        }

        /** Whether the lower band still lies above the threshold at the mean of x. */
        boolean startsAbove() {
            return c > halfWidth * Math.sqrt(v);
        }

        /** Where the lower band falls to the threshold. */
        @Nullable
        Double lowerCrossing() {
            boolean fallsForGood = b < 0 && leading() > 0;
            boolean bendsDown = startsAbove() && leading() < 0;
            if (!fallsForGood && !(bendsDown || startsAbove() && b < 0)) {
                return null;
            }
            double root = rootOfDiscriminant();
            double d = b <= 0 && c >= 0 ? constant() / (root - b * c) : (-b * c - root) / leading();
            return Limits.finite(meanX + d);
        }

        /** Where the upper band falls to the threshold. */
        @Nullable
        Double upperCrossing() {
            if (b >= 0 || leading() <= 0) {
                return null;
            }
            double root = rootOfDiscriminant();
            double d = c >= 0 ? (root - b * c) / leading() : constant() / (-b * c - root);
            return Limits.finite(meanX + d);
        }
    }
}
