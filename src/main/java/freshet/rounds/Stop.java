package freshet.rounds;

import freshet.pumps.PumpKind;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One stop of a round: a task, or a pump to look at ({@code taskId}, {@code title} and {@code dueOn} are null then). {@code place} counts
 * from 1; {@code stateWhy} is the code of why a task was withdrawn; {@code access} is how one gets in at the site.
 */
public record Stop(
        long id,
        long roundId,
        int place,
        long unitId,
        String tag,
        PumpKind kind,
        @Nullable Long taskId,
        @Nullable String title,
        @Nullable LocalDate opensOn,
        @Nullable LocalDate dueOn,
        int minutes,
        StopState state,
        @Nullable String stateWhy,
        @Nullable Long recordId,
        @Nullable Instant doneAt,
        @Nullable String doneBy,
        long assignedTo,
        @Nullable String assignedName,
        int version,
        long siteId,
        String siteName,
        ZoneId zone,
        @Nullable String address,
        @Nullable String access,
        @Nullable String positionName,
        @Nullable String positionNote,
        @Nullable String spot,
        List<NoAccess> noAccess,
        List<AlsoOn> alsoOn) {

    public boolean left() {
        return state.left();
    }

    /** What a form's box sends of its task. */
    public String chosen() {
        return new Chosen(taskId == null ? 0 : taskId, version, assignedTo).toString();
    }

    /** Whether it was left on that day and stands on no later round. */
    public boolean leftOver(LocalDate roundDay) {
        return left() && alsoOn.stream().noneMatch(other -> other.day().isAfter(roundDay));
    }

    /** Whether its work may be done on that day: its window has opened, and it is no matter of a task otherwise. */
    public boolean openOn(LocalDate day) {
        return opensOn == null || !opensOn.isAfter(day);
    }
}
