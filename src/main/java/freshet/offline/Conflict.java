package freshet.offline;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** An entry that did not fit what happened meanwhile, as it was typed; {@code settledHow} is null while nobody settled it. */
public record Conflict(
        long id,
        long personId,
        String personName,
        long unitId,
        String tag,
        Why why,
        Entry entry,
        Instant foundAt,
        @Nullable Instant settledAt,
        @Nullable String settledByName,
        @Nullable How settledHow,
        @Nullable String settledWhy,
        @Nullable String link) {

    /** What happened meanwhile: to the task, the unit, its meter. */
    public enum Why {
        SIGNED,
        CHANGED,
        WITHDRAWN,
        RETIRED,
        METER,
        MOVED
    }

    /** What became of it: the other stands and this is noted in the trail, this was added, or it was thrown away with a reason. */
    public enum How {
        KEEP,
        ADD,
        DISCARD
    }

    public boolean open() {
        return settledAt == null;
    }
}
