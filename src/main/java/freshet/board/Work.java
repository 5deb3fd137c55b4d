package freshet.board;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Set;

/** A signed task: of which job it was and which it contains, its days, and when its standing record says that it was done. */
record Work(
        long taskId,
        long ruleId,
        String occurrence,
        String job,
        Set<String> covers,
        LocalDate opensOn,
        LocalDate dueOn,
        Instant at,
        LocalDate day) {

    boolean of(String other) {
        return job.equals(other);
    }

    boolean does(String other) {
        return of(other) || covers.contains(other);
    }

    /** Whether its days share one with these. */
    boolean overlaps(LocalDate opens, LocalDate due) {
        return !opensOn.isAfter(due) && !dueOn.isBefore(opens);
    }
}
