package freshet.board;

import freshet.happenings.Out;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * One task on the board.
 *
 * @param daysOver above {@code graceDays} is late
 * @param predicted the day it is due comes from how fast the unit is used, and moves with each reading
 * @param outUntil the last day of the hire that its unit is out on; null when it is not
 */
public record BoardLine(
        long taskId,
        long unitId,
        String tag,
        String title,
        @Nullable Why why,
        LocalDate opensOn,
        LocalDate dueOn,
        long daysOver,
        int graceDays,
        boolean predicted,
        @Nullable LocalDate outUntil,
        int minutes) {

    BoardLine out(@Nullable Out out) {
        return new BoardLine(
                taskId,
                unitId,
                tag,
                title,
                why,
                opensOn,
                dueOn,
                daysOver,
                graceDays,
                predicted,
                out == null ? null : out.dueBackOn(),
                minutes);
    }

    public boolean late() {
        return daysOver > graceDays;
    }
}
