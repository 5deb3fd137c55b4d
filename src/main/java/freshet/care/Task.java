package freshet.care;

import freshet.board.Why;
import freshet.checklists.Phase;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import org.jspecify.annotations.Nullable;

/**
 * Due work on a unit with its days, both included, in the zone of its site. {@code minutes} is what to plan with; {@code why} says
 * what made it due; {@code predicted} is a due day that comes from use and moves with each reading; {@code stateWhy} is why it was withdrawn, as a code; {@code recordId} is what it was signed as, corrections included.
 */
public record Task(
        long id,
        long unitId,
        String tag,
        String title,
        @Nullable Why why,
        long checklistId,
        Phase phase,
        long siteId,
        String siteName,
        ZoneId zone,
        @Nullable String positionName,
        LocalDate opensOn,
        LocalDate dueOn,
        int graceDays,
        boolean predicted,
        int minutes,
        TaskState state,
        @Nullable String stateWhy,
        @Nullable Instant startedAt,
        @Nullable Long recordId,
        int version) {

    public boolean open() {
        return state == TaskState.OPEN;
    }

    /** Whether its days have begun. */
    public boolean openOn(LocalDate today) {
        return open() && !opensOn.isAfter(today);
    }

    /** Whether more days have passed since it was due than its rule forgives. */
    public boolean late(LocalDate today) {
        return dueOn.plusDays(graceDays).isBefore(today);
    }

    /** Days past the day it was due; 0 or less before. */
    public long daysOver(LocalDate today) {
        return ChronoUnit.DAYS.between(dueOn, today);
    }
}
