package freshet.happenings;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import org.jspecify.annotations.Nullable;

/**
 * Something that was reported. {@code zone} is that of the site, of the position's site, or of the place where the unit stands. One that
 * another report took the place of is withdrawn without words.
 */
public record Happening(
        long id,
        HappeningKind kind,
        Instant at,
        ZoneId zone,
        @Nullable Long siteId,
        @Nullable String siteName,
        @Nullable Long positionId,
        @Nullable String positionName,
        @Nullable Long unitId,
        @Nullable String tag,
        @Nullable LocalDate dueBackOn,
        @Nullable String note,
        @Nullable String reportedByName,
        Instant reportedAt,
        @Nullable Instant withdrawnAt,
        @Nullable String withdrawnByName,
        @Nullable String withdrawnWhy) {

    public boolean stands() {
        return withdrawnAt == null;
    }
}
