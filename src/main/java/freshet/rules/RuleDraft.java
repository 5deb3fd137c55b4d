package freshet.rules;

import java.time.MonthDay;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** A rule to be, with what {@link CareRule} says of each part. */
public record RuleDraft(
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
        @Nullable String source) {

    /** What would have to be drafted to have this rule. */
    public static RuleDraft of(CareRule rule) {
        return new RuleDraft(
                rule.job(),
                rule.name(),
                rule.scope(),
                rule.triggers(),
                rule.checklistId(),
                rule.fixed(),
                rule.followsPosition(),
                rule.opensDaysBefore(),
                rule.graceDays(),
                rule.accessFrom(),
                rule.accessTo(),
                rule.oncePerSeason(),
                rule.applies(),
                rule.covers(),
                rule.source());
    }

    RuleDraft with(Scope itsScope) {
        return with(job, itsScope);
    }

    RuleDraft forJob(String itsJob) {
        return with(itsJob, scope);
    }

    private RuleDraft with(String itsJob, Scope itsScope) {
        return new RuleDraft(
                itsJob,
                name,
                itsScope,
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
                source);
    }
}
