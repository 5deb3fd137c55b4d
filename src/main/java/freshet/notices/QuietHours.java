package freshet.notices;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.zone.ZoneOffsetTransition;

/** The hours in which no mail is to come, by the clock on the wall of a place; {@code to} no longer counts, and midnight may lie between. */
public record QuietHours(LocalTime from, LocalTime to) {

    public boolean at(LocalTime time) {
        boolean begun = !time.isBefore(from);
        boolean notOver = time.isBefore(to);
        return from.isBefore(to) ? begun && notOver : begun || notOver;
    }

    public boolean at(Instant now, ZoneId zone) {
        return at(LocalTime.ofInstant(now, zone));
    }

    /** When the quiet that holds now is over at the place; now itself when none holds. */
    public Instant over(Instant now, ZoneId zone) {
        if (!at(now, zone)) {
            return now;
        }
        LocalDateTime here = LocalDateTime.ofInstant(now, zone);
        LocalDateTime end = here.toLocalDate().atTime(to);
        if (!end.isAfter(here)) {
            end = end.plusDays(1);
        }
        ZoneOffsetTransition change = zone.getRules().getTransition(end);
        if (change != null && change.isGap()) {
            // the clock jumps over the end: quiet is over when it has jumped
            return change.getInstant();
        }
        Instant first = end.atZone(zone).toInstant();
        // in the hour that comes twice, the first end may be over already
        return first.isAfter(now)
                ? first
                : end.atZone(zone).withLaterOffsetAtOverlap().toInstant();
    }
}
