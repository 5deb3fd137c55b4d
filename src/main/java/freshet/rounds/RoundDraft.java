package freshet.rounds;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A round to be planned: its name, its day, who goes (null is nobody yet), and the tasks, then the pumps to look at, in order. */
public record RoundDraft(
        String name, @Nullable LocalDate day, @Nullable Long personId, List<Chosen> tasks, List<Long> unitIds) {

    /** Without stops, as for a change of name, day or person. */
    public static RoundDraft of(String name, @Nullable LocalDate day, @Nullable Long personId) {
        return new RoundDraft(name, day, personId, List.of(), List.of());
    }

    public RoundDraft with(List<Chosen> chosen) {
        return new RoundDraft(name, day, personId, List.copyOf(chosen), unitIds);
    }

    public RoundDraft looking(List<Long> units) {
        return new RoundDraft(name, day, personId, tasks, List.copyOf(units));
    }
}
