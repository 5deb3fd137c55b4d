package freshet.notices;

import java.time.Instant;

/** A calendar as it is handed out, with what tells whether it is the one that somebody has already. */
public record CalendarFile(byte[] bytes, String tag, Instant changedAt) {}
