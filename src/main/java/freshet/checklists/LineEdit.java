package freshet.checklists;

import freshet.measures.UnitSystem;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.springframework.validation.Errors;

/**
 * One line on the page where a checklist is changed: its place in the form, what was typed, the line that it changes, and what may be
 * done with it. {@code heading} is its section where that begins; {@code limitUnit} is what its limits are typed in.
 */
record LineEdit(
        int index,
        LineFields typed,
        @Nullable CheckLine was,
        @Nullable String heading,
        @Nullable String limitUnit,
        boolean open,
        boolean up,
        boolean down) {

    static List<LineEdit> rows(ChecklistForm form, Checklist base, UnitSystem system, Errors errors, int justAdded) {
        List<LineEdit> rows = new ArrayList<>();
        List<LineFields> lines = form.lines() == null ? List.of() : form.lines();
        for (int i = 0; i < lines.size(); i++) {
            LineFields fields = lines.get(i);
            CheckLine was = ChecklistForm.was(fields, base);
            boolean wrong = errors.getFieldErrors().stream().anyMatch(within(i)::matches);
            rows.add(new LineEdit(
                    i,
                    fields,
                    was,
                    i == 0 || !Objects.equals(section(lines, i), section(lines, i - 1)) ? fields.section() : null,
                    unit(fields, was, system),
                    wrong || i == justAdded || was == null,
                    passes(lines, base, i, i - 1),
                    passes(lines, base, i, i + 1)));
        }
        return rows;
    }

    private interface Within {
        boolean matches(org.springframework.validation.FieldError error);
    }

    private static Within within(int line) {
        String path = "lines[" + line + "]";
        return error -> error.getField().startsWith(path);
    }

    private static @Nullable String section(List<LineFields> lines, int line) {
        return lines.get(line).section();
    }

    private static @Nullable String unit(LineFields fields, @Nullable CheckLine was, UnitSystem system) {
        if (fields.answerKind() != AnswerKind.NUMBER) {
            return null;
        }
        if (was != null && was.ratedBy() != null) {
            return "%";
        }
        String unit = fields.unit();
        return unit == null || !LineUnit.known(unit) ? null : LineUnit.of(unit).read(system);
    }

    /** Whether a line may change places with another: both of one section, and neither for safety. */
    private static boolean passes(List<LineFields> lines, Checklist base, int line, int other) {
        return other >= 0
                && other < lines.size()
                && Objects.equals(section(lines, line), section(lines, other))
                && !safety(lines.get(line), base)
                && !safety(lines.get(other), base);
    }

    private static boolean safety(LineFields fields, Checklist base) {
        CheckLine was = ChecklistForm.was(fields, base);
        return was != null && was.safety();
    }

    public String path() {
        return "lines[" + index + "].";
    }

    /** Whether no owner may take it out. */
    public boolean stays() {
        return was != null && was.stays();
    }

    public boolean safety() {
        return was != null && was.safety();
    }

    public AnswerKind kind() {
        return typed.answerKind();
    }

    /** The lowest severity that it may be given. */
    public int held() {
        return was == null || was.heldSeverity() == null ? 0 : was.heldSeverity();
    }

    public boolean unitStays() {
        return was != null && (was.ratedBy() != null || was.stays());
    }
}
