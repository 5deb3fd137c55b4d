package freshet.timetable;

import java.time.Duration;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** What became of a run when it ran last; {@code doneAt} is when it last ended well, {@code node} who ran it. */
public record LastRun(
        Instant dueAt,
        Instant beganAt,
        @Nullable Instant endedAt,
        @Nullable Trouble trouble,
        @Nullable Instant doneAt,
        String node) {

    public boolean failed() {
        return trouble != null;
    }

    public boolean running() {
        return endedAt == null;
    }

    /** Whole seconds that it took, at least one. */
    public long seconds() {
        return endedAt == null
                ? 0
                : Math.max(1, Duration.between(beganAt, endedAt).toSeconds());
    }

    /** Whether it began long after it was due, as after a time when nothing ran. */
    public boolean madeUp() {
        return Duration.between(dueAt, beganAt).compareTo(Duration.ofMinutes(5)) > 0;
    }
}
