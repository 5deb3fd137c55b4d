package freshet.rounds;

import org.jspecify.annotations.Nullable;

/** A task that changed since it was chosen, and how; {@code who} is who signed it or whose it is now, where that is what changed. */
public record ChangedTask(
        long taskId,
        String tag,
        String title,
        How how,
        @Nullable String who) {

    /** What changed. */
    public enum How {
        SIGNED,
        WITHDRAWN,
        BEGUN,
        ASSIGNED
    }
}
