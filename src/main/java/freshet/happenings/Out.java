package freshet.happenings;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;

/** A unit that is out on hire: since when, and its last day by the calendar of its site. */
public record Out(long unitId, Instant since, LocalDate dueBackOn, ZoneId zone) {}
