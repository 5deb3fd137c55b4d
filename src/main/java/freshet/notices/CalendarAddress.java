package freshet.notices;

import java.time.Instant;
import java.time.ZoneId;

/** That a person has a secret calendar address of a place; the address itself is not known any more. */
public record CalendarAddress(long siteId, String siteName, ZoneId zone, Instant madeAt) {}
