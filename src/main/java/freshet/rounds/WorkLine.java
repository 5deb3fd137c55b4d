package freshet.rounds;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.IsoFields;
import java.time.temporal.TemporalAdjusters;
import org.jspecify.annotations.Nullable;

/** An open task as it stands in the list of work left; {@code roundName} is the next round that holds it. */
public record WorkLine(
        long taskId,
        int version,
        long unitId,
        String tag,
        String title,
        long siteId,
        String siteName,
        @Nullable String positionName,
        LocalDate opensOn,
        LocalDate dueOn,
        long daysOver,
        int graceDays,
        int minutes,
        long assignedTo,
        @Nullable String assignedName,
        @Nullable Long roundId,
        @Nullable String roundName,
        @Nullable LocalDate roundDay) {

    /** The Monday of the ISO week in which it is due, by the calendar of its site. */
    public LocalDate monday() {
        return dueOn.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
    }

    public int week() {
        return dueOn.get(IsoFields.WEEK_OF_WEEK_BASED_YEAR);
    }

    public boolean late() {
        return daysOver > graceDays;
    }

    /** What a form's box sends of it. */
    public String chosen() {
        return new Chosen(taskId, version, assignedTo).toString();
    }
}
