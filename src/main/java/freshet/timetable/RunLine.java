package freshet.timetable;

import java.time.Instant;
import java.time.ZoneId;
import org.jspecify.annotations.Nullable;

/**
 * A line of the timetable: a run, or a local run in one zone with the number of its sites; {@code zone} is that in which its times are
 * told, {@code asked} whether it was asked to run and has not begun.
 */
public record RunLine(
        String room,
        String name,
        ZoneId zone,
        boolean local,
        int sites,
        @Nullable LastRun last,
        @Nullable Instant nextAt,
        boolean asked) {

    public String code() {
        return room + ".run." + name;
    }

    public boolean failed() {
        return last != null && last.failed();
    }
}
