package freshet.rounds;

import java.time.Instant;
import java.time.ZoneId;
import org.jspecify.annotations.Nullable;

/** That somebody stood at a pump and could not get in: when, who and why; never changed afterwards. */
public record NoAccess(
        long id,
        long roundId,
        @Nullable Long taskId,
        long unitId,
        String siteName,
        ZoneId zone,
        Instant at,
        NoAccessWhy why,
        @Nullable String note,
        String notedByName) {}
