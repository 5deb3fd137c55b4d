package freshet.rules;

import java.time.MonthDay;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What makes work due, and for which pumps.
 *
 * @param code the name of a rule that came with the product, or {@code own-<id>}
 * @param job what the work is: of rules with the same job the nearest to a unit holds
 * @param fixed counts on from the day it was due, not from the day it was done
 * @param followsPosition the past of the position counts, whichever unit stands in it
 * @param graceDays days after the due day before it counts as late
 * @param accessFrom first day of the stretch of the year in which the work can be done; with {@code accessTo}, may wrap
 * @param applies whether it holds always, storage included, only in use, or only while laid up
 * @param covers jobs that this work contains
 */
public record CareRule(
        long id,
        String code,
        String job,
        String name,
        Scope scope,
        List<Trigger> triggers,
        long checklistId,
        boolean fixed,
        boolean followsPosition,
        int opensDaysBefore,
        int graceDays,
        @Nullable MonthDay accessFrom,
        @Nullable MonthDay accessTo,
        boolean oncePerSeason,
        Applies applies,
        Set<String> covers,
        boolean active,
        @Nullable String source,
        int version) {

    /** The same rule, were it not at rest. */
    CareRule awake() {
        return new CareRule(
                id,
                code,
                job,
                name,
                scope,
                triggers,
                checklistId,
                fixed,
                followsPosition,
                opensDaysBefore,
                graceDays,
                accessFrom,
                accessTo,
                oncePerSeason,
                applies,
                covers,
                true,
                source,
                version);
    }
}
