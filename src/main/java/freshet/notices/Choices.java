package freshet.notices;

import freshet.people.Person;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.TemporalAdjusters;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Which mail a person wants and where: {@code address} said yes, {@code askedAddress} has not answered yet. {@code sendHour} and the
 * quiet hours are by the clock of each place; no digest is owed whose hour was before {@code chosenAt}.
 */
public record Choices(
        long personId,
        @Nullable String address,
        @Nullable String askedAddress,
        @Nullable Instant askedAt,
        Rhythm rhythm,
        DayOfWeek weekday,
        int sendHour,
        @Nullable QuietHours quiet,
        boolean everySite,
        Set<Long> siteIds,
        boolean tellOverdue,
        int overdueDays,
        boolean tellDanger,
        Instant chosenAt,
        int version) {

    /** After so many days late the owners hear of it, unless they choose otherwise; common practice, no source. */
    static final int OVERDUE_DAYS = 7;

    /** Of somebody who never chose: no digest, and owners hear of danger and late work once they have an address. */
    static Choices unmade(long personId) {
        return new Choices(
                personId,
                null,
                null,
                null,
                Rhythm.NONE,
                DayOfWeek.MONDAY,
                6,
                null,
                true,
                Set.of(),
                true,
                OVERDUE_DAYS,
                true,
                Instant.EPOCH,
                0);
    }

    /**
     * The day whose digest is owed now at a place: today's from its hour to midnight, for the next one says it all again; a weekly one
     * until the next is.
     */
    Optional<LocalDate> digestDay(Instant now, ZoneId zone) {
        LocalDate today = LocalDate.ofInstant(now, zone);
        LocalDate day = rhythm == Rhythm.WEEKLY ? today.with(TemporalAdjusters.previousOrSame(weekday)) : today;
        if (hour(day, zone).isAfter(now)) {
            day = day.minusDays(rhythm == Rhythm.WEEKLY ? 7 : 1);
        }
        boolean owed = rhythm != Rhythm.NONE
                && (rhythm == Rhythm.WEEKLY || day.equals(today))
                && !hour(day, zone).isBefore(chosenAt);
        return owed ? Optional.of(day) : Optional.empty();
    }

    private Instant hour(LocalDate day, ZoneId zone) {
        return day.atTime(sendHour, 0).atZone(zone).toInstant();
    }

    boolean quietAt(Instant now, ZoneId zone) {
        return quiet != null && quiet.at(now, zone);
    }

    /** Whether this person, as they are now, is to get mail of a kind. */
    boolean wants(MailKind kind, Person person) {
        return person.active()
                && switch (kind) {
                    case ADDRESS -> askedAddress != null;
                    case DIGEST -> address != null && rhythm != Rhythm.NONE;
                    case OVERDUE -> address != null && tellOverdue && person.owner();
                    case DANGER -> address != null && tellDanger && person.owner();
                };
    }

    /** Whether an address was asked at this moment or later and has not answered. */
    boolean askedSince(Instant moment) {
        return askedAt != null && !askedAt.isBefore(moment);
    }

    boolean covers(long siteId) {
        return everySite || siteIds.contains(siteId);
    }
}
