package freshet.board;

import freshet.rules.CareRule;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Set;

/**
 * A signed task: of which job it was and which it contains, its days, and when its standing record says that it was done. One that no rule
 * opened has no rule (0) and no job, and does the work of rules with its checklist.
 */
record Work(
        long taskId,
        long ruleId,
        String occurrence,
        String job,
        Set<String> covers,
        LocalDate opensOn,
        LocalDate dueOn,
        Instant at,
        LocalDate day,
        long checklistId) {

    static final long NO_RULE = 0;

    boolean of(String other) {
        return job.equals(other);
    }

    boolean does(CareRule rule) {
        return of(rule.job()) || covers.contains(rule.job()) || ruleId == NO_RULE && checklistId == rule.checklistId();
    }

    /** Whether it is the job itself, and not larger work that contains it. */
    boolean itself(CareRule rule) {
        return of(rule.job()) || ruleId == NO_RULE;
    }

    /** Whether its days share one with these. */
    boolean overlaps(LocalDate opens, LocalDate due) {
        return !opensOn.isAfter(due) && !dueOn.isBefore(opens);
    }
}
