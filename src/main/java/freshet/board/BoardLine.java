package freshet.board;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** One task on the board; {@code daysOver} above 0 is late. */
public record BoardLine(
        long taskId,
        long unitId,
        String tag,
        String title,
        @Nullable String why,
        LocalDate opensOn,
        LocalDate dueOn,
        long daysOver,
        int minutes) {

    public boolean late() {
        return daysOver > 0;
    }
}
