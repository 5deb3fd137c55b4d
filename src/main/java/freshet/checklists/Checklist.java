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

    Checklist with(List<CheckLine> itsLines) {
        return new Checklist(id, code, name, pumpKind, phase, effect, minutes, versionId, number, itsLines);
    }

    /** What would stand after a draft with nothing wrong. */
    Checklist becomes(ChecklistDraft draft) {
        return new Checklist(
                id,
                code,
                name,
                pumpKind,
                phase,
                effect,
                draft.minutes(),
                versionId,
                number + 1,
                Revision.lines(this, draft));
    }

    public CheckLine line(long lineId) {
        return lines.stream()
                .filter(line -> line.id() == lineId)
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(code + " has no line " + lineId));
    }

    /** The headings under which its lines stand, in order. */
    public List<String> sections() {
        return lines.stream().map(CheckLine::section).distinct().toList();
    }

    /** Whether a version of these minutes and lines would be the same, their order included. */
    boolean saysTheSameAs(int otherMinutes, List<CheckLine> other) {
        boolean same = minutes == otherMinutes && lines.size() == other.size();
        for (int i = 0; same && i < lines.size(); i++) {
            same = lines.get(i).sameAs(other.get(i));
        }
        return same;
    }

    /** Whether some of its lines are only for a person recorded as competent. */
    public boolean needs(Competence competence) {
        return lines.stream().anyMatch(line -> line.competence() == competence);
    }
}
