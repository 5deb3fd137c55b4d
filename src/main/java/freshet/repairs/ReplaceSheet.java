package freshet.repairs;

import freshet.findings.FailureMode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * The sums for the question whether to repair or to replace; it decides nothing, and each figure is null when something for it is not
 * known.
 *
 * @param cost of the repair
 * @param priceNew of a new pump
 * @param inCareFrom the first day that is known of the pump
 * @param years since then, in tenths
 * @param lifeYears that such a pump is expected to last
 * @param lifeFrom where that is from: typed, or a survey
 * @param capacity what it still gives, as a fraction of reference
 * @param sameMode of how it failed, if that was so before
 * @param sameFailures within twelve months, this one among them
 * @param longestLeadDays of the parts that are not here
 * @param seasonOpensOn first day of the opening that it is wanted for
 */
public record ReplaceSheet(
        Costs cost,
        @Nullable BigDecimal priceNew,
        LocalDate inCareFrom,
        BigDecimal years,
        @Nullable Integer lifeYears,
        LifeFrom lifeFrom,
        @Nullable Share capacity,
        @Nullable FailureMode sameMode,
        int sameFailures,
        @Nullable Integer longestLeadDays,
        @Nullable LocalDate seasonOpensOn,
        LocalDate today) {

    /** Where the expected life is from. */
    public enum LifeFrom {
        TYPED,
        /** The medians of an old survey of equipment in buildings, as HVAC reference tables give them (ASHRAE); to be used with caution. */
        SURVEY,
        UNKNOWN
    }

    /** A fraction with its expanded uncertainty. */
    public record Share(double fraction, double expandedUncertainty, double headM) {}

    /** Half the price of a new one: common rule, Pumps &amp; Systems, April 2007, Repair vs. Replace. */
    static final BigDecimal HALF = new BigDecimal("0.50");

    static final int FAILURES_THAT_SAY_SOMETHING = 2;

    /** The repair's cost over the price of a new one. */
    public @Nullable BigDecimal costRatio() {
        return priceNew == null ? null : cost.total().divide(priceNew, 4, RoundingMode.HALF_UP);
    }

    public boolean costsMoreThanHalf() {
        return priceNew != null && cost.total().compareTo(priceNew.multiply(HALF)) > 0;
    }

    public @Nullable BigDecimal ageRatio() {
        return lifeYears == null ? null : years.divide(BigDecimal.valueOf(lifeYears), 4, RoundingMode.HALF_UP);
    }

    public boolean outlived() {
        return lifeYears != null && years.compareTo(BigDecimal.valueOf(lifeYears)) >= 0;
    }

    /** Below what a pump is repaired first for: common practice, no source. */
    public boolean weak() {
        return capacity != null && capacity.fraction() < 0.70;
    }

    public boolean failedSoBefore() {
        return sameFailures >= FAILURES_THAT_SAY_SOMETHING;
    }

    /** Days until the opening from today; negative when it has begun. */
    public @Nullable Long daysToSeason() {
        return seasonOpensOn == null ? null : seasonOpensOn.toEpochDay() - today.toEpochDay();
    }

    public boolean comesAfterOpening() {
        Long days = daysToSeason();
        return days != null && longestLeadDays != null && longestLeadDays > days;
    }
}
