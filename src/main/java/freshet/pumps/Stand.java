package freshet.pumps;

import java.time.Instant;
import java.time.ZoneId;
import org.jspecify.annotations.Nullable;

/** Where a unit stands or stood, and from when to when; {@code until} null is now. */
public record Stand(
        long siteId,
        String siteName,
        ZoneId zone,
        @Nullable Long positionId,
        @Nullable String positionName,
        @Nullable String spot,
        Instant since,
        @Nullable Instant until,
        @Nullable String note) {

    public Whereabouts whereabouts() {
        return new Whereabouts(siteId, positionId, spot);
    }
}
