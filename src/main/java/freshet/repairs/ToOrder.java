package freshet.repairs;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A part that is not here yet, with its repair.
 *
 * @param seasonOpensOn first day of the opening that it is wanted for; null at a site without openings
 * @param orderBy that day less the days it takes to come and two weeks: common practice, no source; null once it is ordered or when it is
 *     not known how long it takes
 */
public record ToOrder(
        Repair repair,
        Part part,
        @Nullable LocalDate seasonOpensOn,
        @Nullable LocalDate orderBy,
        boolean late) {

    /** What is kept between a part's coming and the opening. Common practice, no source. */
    static final int DAYS_TO_SPARE = 14;

    static ToOrder of(Repair repair, Part part, @Nullable LocalDate seasonOpensOn, LocalDate today) {
        Integer lead = part.leadDays();
        LocalDate orderBy = seasonOpensOn == null || lead == null || !part.toOrder()
                ? null
                : seasonOpensOn.minusDays(lead).minusDays(DAYS_TO_SPARE);
        boolean late = part.late(today, repair.plan().plannedFor()) || orderBy != null && orderBy.isBefore(today);
        return new ToOrder(repair, part, seasonOpensOn, orderBy, late);
    }
}
