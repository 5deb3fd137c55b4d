package freshet.wear;

import freshet.reliability.HoursToThreshold;
import freshet.reliability.Interval;
import freshet.reliability.OutOfRange;
import freshet.reliability.UsageRate;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * When a wearing unit comes to the threshold, by its line and by its use.
 *
 * @param hours lifetime hours at which the mean line is there
 * @param notBeforeHours the one-sided lower bound of these; null when the line's band is below already at its middle
 * @param interval the two-sided interval of these
 * @param passed it has run these hours
 * @param maybePassed it has run the lower bound, not the hours themselves
 * @param expectedOn the day of these hours; null when the readings tell no use
 * @param notBeforeOn the lower bound at the most use; at the expected use when {@code useBounded} is false
 * @param notAfterOn the upper end of the interval at the least use; null when there is none within ten years
 * @param useBounded the readings are enough to bound the use
 * @param assumed on the way lies a part of the year without readings, taken at the mean of all days
 * @param dueByUse by its use since the last reading it should be there already
 */
public record Reaching(
        double hours,
        @Nullable Double notBeforeHours,
        @Nullable Interval interval,
        boolean passed,
        boolean maybePassed,
        @Nullable LocalDate expectedOn,
        @Nullable LocalDate notBeforeOn,
        @Nullable LocalDate notAfterOn,
        boolean useBounded,
        boolean assumed,
        boolean dueByUse) {

    /** A latest day farther off than this says nothing. */
    private static final int MOST_YEARS = 10;

    static @Nullable Reaching of(HoursToThreshold to, @Nullable Usage usage, LocalDate today) {
        if (to.estimate() == null) {
            return null;
        }
        boolean passed = to.remainingEstimate() != null && to.remainingEstimate() == 0;
        boolean maybe = !passed && to.remainingLower() != null && to.remainingLower() == 0;
        UsageRate.Arrival<SeasonPart> expected = arrival(usage, to.estimate());
        UsageRate.Arrival<SeasonPart> least = arrival(usage, to.lowerOneSided());
        UsageRate.Arrival<SeasonPart> most =
                arrival(usage, to.interval() == null ? null : to.interval().upper());
        boolean bounded = least != null && least.earliest() != null;
        LocalDate on = expected == null ? null : expected.expected();
        return new Reaching(
                to.estimate(),
                to.lowerOneSided(),
                to.interval(),
                passed,
                maybe,
                on,
                least == null ? null : bounded ? least.earliest() : least.expected(),
                most == null || most.latest() == null || most.latest().isAfter(today.plusYears(MOST_YEARS))
                        ? null
                        : most.latest(),
                bounded,
                expected != null && !expected.assumed().isEmpty(),
                !passed && on != null && on.isBefore(today));
    }

    private static UsageRate.@Nullable Arrival<SeasonPart> arrival(@Nullable Usage usage, @Nullable Double hours) {
        try {
            return usage == null || hours == null
                    ? null
                    : usage.rate().reaching(Math.max(0, hours), WearQuestion.LEVEL);
        } catch (OutOfRange tooFarAway) {
            return null;
        }
    }
}
