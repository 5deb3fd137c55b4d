package freshet.happenings;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;

/** A unit that is out on hire: since when, and its last day by the calendar of its site. */
public record Out(long unitId, Instant since, LocalDate dueBackOn, ZoneId zone) {

    /** Days past its last day, there; 0 or less when it is not late. */
    public long daysOver(Instant now) {
        return ChronoUnit.DAYS.between(dueBackOn, LocalDate.ofInstant(now, zone));
    }
}
