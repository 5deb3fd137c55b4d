package freshet.checklists;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** The next version of a checklist as an owner wants it; {@code note} says what was changed and why. */
public record ChecklistDraft(int minutes, @Nullable String note, List<LineDraft> lines) {

    /** The version as it stands. */
    public static ChecklistDraft of(Checklist checklist) {
        return new ChecklistDraft(
                checklist.minutes(),
                null,
                checklist.lines().stream().map(LineDraft::of).toList());
    }
}
