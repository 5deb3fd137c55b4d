package freshet.checklists;

import freshet.measures.UnitSystem;
import freshet.people.Refused;
import freshet.people.Refused.Wrong;
import freshet.people.Typed;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;

/** What was typed on the page where a checklist is changed; {@code number} is the version that the page was opened with. */
record ChecklistForm(
        @Nullable String number,
        @Nullable String minutes,
        @Nullable String note,
        @Nullable List<@Nullable LineFields> lines) {

    static ChecklistForm of(Checklist stands, UnitSystem system) {
        return new ChecklistForm(
                String.valueOf(stands.number()),
                String.valueOf(stands.minutes()),
                null,
                stands.lines().stream().map(line -> LineFields.of(line, system)).toList());
    }

    int opened(Checklist newest) {
        boolean known = number != null && number.matches("[1-9]\\d{0,8}");
        return known ? Math.min(Integer.parseInt(number), newest.number()) : newest.number();
    }

    /** What belongs to this version, whatever a browser sent. */
    ChecklistForm complete(Checklist base) {
        List<LineFields> whole = typedLines().stream()
                .map(fields -> fields.complete(was(fields, base)))
                .toList();
        return with(String.valueOf(base.number()), whole);
    }

    private List<LineFields> typedLines() {
        return lines == null
                ? List.of()
                : lines.stream().filter(Objects::nonNull).toList();
    }

    private ChecklistForm with(@Nullable String itsNumber, List<LineFields> itsLines) {
        return new ChecklistForm(itsNumber, minutes, note, List.copyOf(itsLines));
    }

    static @Nullable CheckLine was(LineFields fields, Checklist base) {
        Long origin = fields.originId();
        return origin == null
                ? null
                : base.lines().stream()
                        .filter(line -> line.origin() == origin)
                        .findFirst()
                        .orElse(null);
    }

    /** The same on a version that another published meanwhile: a line that it does not have is a new one, one that it has more is there. */
    ChecklistForm onto(Checklist base, Checklist newest, UnitSystem system) {
        List<LineFields> moved = new ArrayList<>();
        for (LineFields fields : typedLines()) {
            CheckLine was = was(fields, base);
            boolean gone = was != null && was(fields, newest) == null;
            moved.add(was != null && gone ? fields.asNew(was) : fields);
        }
        Set<Long> known = new HashSet<>();
        base.lines().forEach(line -> known.add(line.origin()));
        ChecklistForm form = with(String.valueOf(newest.number()), moved);
        for (CheckLine line : newest.lines()) {
            if (!known.contains(line.origin())) {
                form = form.add(LineFields.of(line, system), newest);
            }
        }
        return form;
    }

    /** A line at the end of its section. */
    ChecklistForm add(LineFields fields, Checklist base) {
        List<String> sections = base.sections();
        int section = sections.indexOf(fields.section());
        List<LineFields> changed = new ArrayList<>(typedLines());
        int at = 0;
        for (int i = 0; i < changed.size(); i++) {
            if (sections.indexOf(changed.get(i).section()) <= section) {
                at = i + 1;
            }
        }
        changed.add(at, fields);
        return with(number, changed);
    }

    ChecklistForm takeOut(int line) {
        return changed(line, changed -> {
            changed.remove(line);
            return changed;
        });
    }

    /** One place up or down; over the end of its section nothing moves. */
    ChecklistForm move(int line, int by) {
        return changed(line, changed -> {
            int to = line + by;
            if (to >= 0
                    && to < changed.size()
                    && Objects.equals(
                            changed.get(to).section(), changed.get(line).section())) {
                Collections.swap(changed, line, to);
            }
            return changed;
        });
    }

    private ChecklistForm changed(int line, UnaryOperator<List<LineFields>> change) {
        List<LineFields> typed = new ArrayList<>(typedLines());
        return line < 0 || line >= typed.size() ? this : with(number, change.apply(typed));
    }

    /** A field that a page carries along unseen. */
    record Hidden(String name, String value) {}

    List<Hidden> hidden() {
        List<Hidden> hidden = new ArrayList<>();
        carry(hidden, "number", number);
        carry(hidden, "minutes", minutes);
        List<LineFields> whole = typedLines();
        for (int i = 0; i < whole.size(); i++) {
            String path = "lines[" + i + "].";
            whole.get(i).each((part, value) -> carry(hidden, path + part, value));
        }
        return hidden;
    }

    private static void carry(List<Hidden> hidden, String name, @Nullable String value) {
        if (value != null && !value.isEmpty()) {
            hidden.add(new Hidden(name, value));
        }
    }

    /**
     * The draft of the next version.
     *
     * @throws Refused for what is no number, each at its field
     */
    ChecklistDraft draft(Checklist base, UnitSystem system) {
        List<Wrong> wrongs = new ArrayList<>();
        List<LineDraft> drafts = new ArrayList<>();
        for (LineFields fields : typedLines()) {
            drafts.add(fields.draft(was(fields, base), system, "lines[" + drafts.size() + "].", wrongs));
        }
        int whole = CopyForm.minutesOf(Typed.textOrEmpty(minutes));
        Refused.ifAny(wrongs);
        return new ChecklistDraft(whole, Typed.text(note), drafts);
    }
}
