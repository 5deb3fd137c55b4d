package freshet.reliability;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How the remaining capacity of one unit falls with its run hours, and when it may reach a threshold.
 *
 * <p>Straight line by least squares, weighted 1/u² when every reading used states its standard uncertainty u; s² = Σ w r²/(n - 2). Intervals are
 * two-sided and pointwise at the level asked, from Student's distribution with n - 2 degrees of freedom. Only readings at or after the last repair
 * are used. What cannot be estimated is null.
 *
 * @param verdict what may be said
 * @param n readings used
 * @param df n - 2; null without a line
 * @param intercept share at hour 0
 * @param slopePerHour change of share per run hour, negative when wearing
 * @param residualSd standard deviation of a reading of weight 1
 * @param at the line and its bands at the hours asked
 * @param robust the line of median slopes; null without a line
 */
public record CapacityTrend(
        Verdict verdict,
        int n,
        @Nullable Integer df,
        @Nullable Double intercept,
        @Nullable Double slopePerHour,
        @Nullable Double seIntercept,
        @Nullable Double seSlope,
        @Nullable Double residualSd,
        @Nullable Double rSquared,
        @Nullable Interval slopeInterval,
        List<At> at,
        HoursToThreshold hoursToThreshold,
        @Nullable RobustLine robust) {

    /** What the readings show. */
    public enum Verdict {
        WEARING,
        NO_TREND_YET,
        TOO_FEW
    }

    /** The mean line at given hours, its band, and the band of one further reading of weight 1. */
    public record At(
            double runHours,
            @Nullable Double fit,
            @Nullable Double seFit,
            @Nullable Double meanLower,
            @Nullable Double meanUpper,
            @Nullable Double readingLower,
            @Nullable Double readingUpper) {}

    /** Most readings of one unit. */
    public static final int MOST_READINGS = 10_000;

    private static final int MOST_PLACES = 10_000;

    /**
     * Fits the trend.
     *
     * @param readings 0 to 10 000, in any order
     * @param repairHours run hours of repairs that renewed the capacity, 0 to 1e9 h each; readings before the last are left out
     * @param threshold share at which the unit is done, 0 to 1e6 like the readings
     * @param nowHours run hours today, 0 to 1e9 h
     * @param level of confidence, 0.5 to 0.999999
     * @param atHours where the line is asked, 0 to 1e9 h each
     * @throws OutOfRange for a number outside its range
     */
    public static CapacityTrend of(
            List<CapacityReading> readings,
            List<Double> repairHours,
            double threshold,
            double nowHours,
            double level,
            List<Double> atHours) {
        List<CapacityReading> used = sinceLastRepair(checked(readings), lastRepair(repairHours));
        Limits.within("threshold", threshold, 0, 1e6, "of the reference");
        Limits.hours("nowHours", nowHours);
        Limits.level(level);
        List<Double> places = hours("atHours", atHours, MOST_PLACES);

        double[] x = used.stream().mapToDouble(CapacityReading::runHours).toArray();
        double[] y =
                used.stream().mapToDouble(CapacityReading::remainingFraction).toArray();
        StraightLine line = StraightLine.through(x, y, weights(used), Limits.SHORTEST_HOURS);
        if (line == null) {
            return withoutLine(used.size(), places);
        }
        Double t = line.df() > 0 ? (Double) Quantiles.studentTwoSided(level, line.df()) : null;
        Double seSlope = line.seSlope();
        Interval slopes = t == null || seSlope == null ? null : Interval.around(line.slope(), t * seSlope);
        List<At> at = places.stream().map(place -> at(line, place, t)).toList();
        return new CapacityTrend(
                verdict(line.n(), slopes),
                line.n(),
                line.df(),
                line.intercept(),
                line.slope(),
                line.seAt(0),
                seSlope,
                line.residualSd(),
                line.rSquared(),
                slopes,
                at,
                HoursToThreshold.of(line, threshold, nowHours, level),
                RobustLine.through(x, y, level));
    }

    private static CapacityTrend withoutLine(int n, List<Double> places) {
        return new CapacityTrend(
                verdict(n, null),
                n,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                places.stream()
                        .map(place -> new At(place, null, null, null, null, null, null))
                        .toList(),
                HoursToThreshold.UNKNOWN,
                null);
    }

    private static Verdict verdict(int n, @Nullable Interval slopes) {
        if (n < 3) {
            return Verdict.TOO_FEW;
        }
        boolean below = slopes != null && slopes.upper() != null && slopes.upper() < 0;
        return below ? Verdict.WEARING : Verdict.NO_TREND_YET;
    }

    private static At at(StraightLine line, double hours, @Nullable Double t) {
        double fit = line.at(hours);
        Double se = line.seAt(hours);
        Double sdOfNext = line.sdOfNextAt(hours);
        if (t == null || se == null || sdOfNext == null) {
            return new At(hours, fit, null, null, null, null, null);
        }
        return new At(hours, fit, se, fit - t * se, fit + t * se, fit - t * sdOfNext, fit + t * sdOfNext);
    }

    private static List<CapacityReading> checked(List<CapacityReading> readings) {
        List<CapacityReading> checked = new ArrayList<>();
        for (CapacityReading reading : Limits.list("readings", readings, 0, MOST_READINGS)) {
            checked.add(reading.checked("readings[" + checked.size() + "]"));
        }
        return checked;
    }

    private static double lastRepair(List<Double> repairHours) {
        return hours("repairHours", repairHours, MOST_READINGS).stream()
                .mapToDouble(Double::doubleValue)
                .max()
                .orElse(0);
    }

    private static List<Double> hours(String field, List<Double> values, int most) {
        List<Double> hours = Limits.list(field, values, 0, most);
        for (int i = 0; i < hours.size(); i++) {
            Limits.hours(field + "[" + i + "]", hours.get(i));
        }
        return hours;
    }

    private static List<CapacityReading> sinceLastRepair(List<CapacityReading> readings, double lastRepair) {
        return readings.stream()
                .filter(reading -> reading.runHours() >= lastRepair)
                .sorted(Comparator.comparingDouble(CapacityReading::runHours)
                        .thenComparingDouble(CapacityReading::remainingFraction))
                .toList();
    }

    private static double[] weights(List<CapacityReading> readings) {
        boolean all = readings.stream().allMatch(reading -> reading.standardUncertainty() != null);
        return readings.stream()
                .mapToDouble(reading -> all ? reading.weight() : 1)
                .toArray();
    }
}
