package freshet.checklists;

import freshet.people.Competence;
import freshet.pumps.PumpKind;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** One version of a checklist with its lines in the order of work, safety first; {@code pumpKind} null is for any kind. */
public record Checklist(
        long id,
        String code,
        String name,
        @Nullable PumpKind pumpKind,
        Phase phase,
        Effect effect,
        int minutes,
        long versionId,
        int number,
        List<CheckLine> lines) {

    public CheckLine line(long lineId) {
        return lines.stream()
                .filter(line -> line.id() == lineId)
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(code + " has no line " + lineId));
    }

    /** Whether some of its lines are only for a person recorded as competent. */
    public boolean needs(Competence competence) {
        return lines.stream().anyMatch(line -> line.competence() == competence);
    }
}
