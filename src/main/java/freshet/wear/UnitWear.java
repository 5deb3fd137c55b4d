package freshet.wear;

import freshet.pumps.Unit;
import freshet.reliability.CapacityTrend;
import freshet.reliability.Interval;
import freshet.reliability.RobustLine;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How one unit wears, and when it may come to the threshold.
 *
 * @param hoursNow lifetime hours as last read; null when never read
 * @param usage null when the readings tell no rate
 * @param reaching null unless it is wearing and still in care
 * @param pooled null when the unit has tests enough, or its model too few lines
 */
public record UnitWear(
        Unit unit,
        WearQuestion asked,
        UnitLine line,
        @Nullable Double hoursNow,
        @Nullable Instant hoursReadAt,
        @Nullable Usage usage,
        @Nullable Reaching reaching,
        @Nullable Pooled pooled) {

    public WearWord word() {
        return line.word();
    }

    public CapacityTrend trend() {
        return line.trend();
    }

    /** Percent of the first test lost in 100 hours; null without a line. */
    public @Nullable Double lossPer100h() {
        return percentPer100h(trend().slopePerHour());
    }

    static @Nullable Double percentPer100h(@Nullable Double slopePerHour) {
        return slopePerHour == null ? null : Double.valueOf(-1e4 * slopePerHour);
    }

    /** The tests that have no hours. */
    public List<Tested> withoutHours() {
        return line.tests().stream()
                .filter(tested -> tested.use() == Tested.Use.NO_HOURS)
                .toList();
    }

    /** Robust and fitted slopes of a wearing unit that differ by more than this factor tell different stories; our own rule, no source. */
    private static final double FAR_APART = 2;

    /** Whether the robust slope lies outside the interval of the fitted one or the other way round, or the two are far apart on a wearing unit. */
    public boolean robustDisagrees() {
        RobustLine robust = trend().robust();
        if (robust == null || trend().slopePerHour() == null) {
            return false;
        }
        double ratio = robust.slopePerHour() / trend().slopePerHour();
        return outside(robust.slopePerHour(), trend().slopeInterval())
                || outside(trend().slopePerHour(), robust.slopeInterval())
                || word() == WearWord.WEARING && !(ratio > 1 / FAR_APART && ratio < FAR_APART);
    }

    private static boolean outside(double value, @Nullable Interval interval) {
        return interval != null
                && interval.lower() != null
                && interval.upper() != null
                && (value < interval.lower() || value > interval.upper());
    }

    /** Lifetime hours at which the robust line comes to the threshold; null when it does not fall. */
    public @Nullable Double robustReaches() {
        RobustLine robust = trend().robust();
        return robust == null || robust.slopePerHour() >= 0
                ? null
                : Double.valueOf((asked.threshold() - robust.intercept()) / robust.slopePerHour());
    }

    /** The tests scatter about the line by less than half of the doubt stated with them, so that the line's own limits may be too narrow. */
    public boolean closerThanStated() {
        Double scatter = trend().residualSd();
        Double stated = line.usualUncertainty();
        return scatter != null && stated != null && scatter < stated / 2;
    }

    /** The tests that count were not all made at about one head (within a tenth), so that part of the line may be the head's. */
    public boolean headsDiffer() {
        double[] heads = line.tests().stream()
                .filter(tested -> tested.use() == Tested.Use.COUNTS)
                .mapToDouble(tested -> tested.test().headM())
                .sorted()
                .toArray();
        return heads.length > 1 && heads[heads.length - 1] - heads[0] > 0.1 * heads[heads.length - 1];
    }

    /** Some tests that count were made on another rig than the first. */
    public boolean rigsDiffer() {
        return line.tests().stream()
                .anyMatch(tested ->
                        tested.use() == Tested.Use.COUNTS && tested.test().onAnotherRig());
    }
}
