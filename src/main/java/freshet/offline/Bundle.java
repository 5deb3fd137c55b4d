package freshet.offline;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What one person takes along: which units and tasks, how each stood at {@code now} by the server's clock, and the addresses of the
 * pages that go with them.
 */
public record Bundle(long personId, String personName, Instant now, List<UnitRow> units, List<TaskRow> tasks) {

    /** One unit; {@code stand} says where it stood, {@code meters} what each kind of meter showed last. */
    public record UnitRow(
            long id,
            String tag,
            String model,
            String place,
            String stand,
            Map<String, String> meters,
            List<String> pages) {}

    /** One task with the version of its checklist and what its lines ask at the least. */
    public record TaskRow(
            long id,
            long unitId,
            String tag,
            String title,
            String place,
            LocalDate dueOn,
            int minutes,
            long checklistVersion,
            String page,
            List<LineRow> lines) {}

    /** What a phone has to know of a line before it may be signed: which field answers it, and what a failure asks for. */
    public record LineRow(
            String field,
            String question,
            boolean required,
            boolean safety,
            boolean locked,
            boolean asksInstrument,
            @Nullable Integer failSeverity) {}
}
