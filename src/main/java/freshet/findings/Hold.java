package freshet.findings;

import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import org.jspecify.annotations.Nullable;

/** A unit that is held until a signed record proves it; {@code zone} is that of the place where it stands. */
public record Hold(
        long id,
        long unitId,
        String tag,
        ZoneId zone,
        HoldKind kind,
        Why why,
        Instant since,
        String byName,
        @Nullable Instant releasedAt,
        @Nullable String releasedByName,
        @Nullable Long releasedRecordId) {

    public boolean open() {
        return releasedAt == null;
    }

    /** The minute in which it began: work is not timed closer. */
    public Instant sinceMinute() {
        return since.truncatedTo(ChronoUnit.MINUTES);
    }
}
