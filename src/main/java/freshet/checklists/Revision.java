package freshet.checklists;

import static freshet.people.Refused.Wrong.at;

import freshet.people.Refused;
import freshet.people.Refused.Wrong;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Makes the lines of the next version out of a draft, or says everything that keeps it from being published. What the house holds on
 * to whatever an owner wants: safety lines stay, first and unskippable; a line whose failure stops the pump stays and keeps its
 * severity; nothing is moved from one side of a safety line to the other.
 */
final class Revision {

    static final int MOST_LINES = 60;
    static final int LONGEST_DAY = 480;
    private static final int LONGEST_NOTE = 300;

    private final Checklist stands;
    private final ChecklistDraft draft;
    private final Map<Long, Integer> places = new HashMap<>();
    private final List<String> sections;
    private final List<Wrong> wrongs = new ArrayList<>();

    private Revision(Checklist stands, ChecklistDraft draft) {
        this.stands = stands;
        this.draft = draft;
        for (int i = 0; i < stands.lines().size(); i++) {
            places.put(stands.lines().get(i).origin(), i);
        }
        sections = stands.sections();
    }

    /**
     * The lines of the next version, in order.
     *
     * @throws Refused with each wrong at its field, {@code lines[3].question}
     */
    static List<CheckLine> lines(Checklist stands, ChecklistDraft draft) {
        return new Revision(stands, draft).lines();
    }

    private List<CheckLine> lines() {
        whole();
        List<CheckLine> lines = new ArrayList<>();
        for (int i = 0; i < draft.lines().size(); i++) {
            LineDraft line = draft.lines().get(i);
            CheckLine was = was(line);
            if (line.origin() != null && was == null) {
                wrongs.add(at(field(i, "question"), "checklists.edit.gone"));
            } else {
                wrongs.addAll(LineChecks.wrongs(line, was, field(i, "")));
            }
            inItsPlace(i, line, was);
            lines.add(LineChecks.checkLine(line, was, i + 1));
        }
        Refused.ifAny(wrongs);
        return lines;
    }

    private static String field(int line, String part) {
        return "lines[" + line + "]." + part;
    }

    private @Nullable CheckLine was(LineDraft line) {
        Integer place = place(line);
        return place == null ? null : stands.lines().get(place);
    }

    private @Nullable Integer place(LineDraft line) {
        return line.origin() == null ? null : places.get(line.origin());
    }

    /** What is wrong with the draft as a whole. */
    private void whole() {
        if (draft.minutes() < 1 || draft.minutes() > LONGEST_DAY) {
            wrongs.add(at("minutes", "checklists.edit.minutes", LONGEST_DAY));
        }
        if (draft.note() != null && draft.note().length() > LONGEST_NOTE) {
            wrongs.add(at("note", "checklists.edit.tooLong", LONGEST_NOTE));
        }
        if (draft.lines().size() > MOST_LINES) {
            wrongs.add(at("lines", "checklists.edit.tooMany", MOST_LINES));
        }
        if (draft.lines().isEmpty()) {
            wrongs.add(at("lines", "checklists.edit.none"));
        }
        Set<Long> there = new HashSet<>();
        for (int i = 0; i < draft.lines().size(); i++) {
            Long origin = draft.lines().get(i).origin();
            if (origin != null && !there.add(origin)) {
                wrongs.add(at(field(i, "question"), "checklists.edit.twice"));
            }
        }
        stands.lines().stream()
                .filter(line -> line.stays() && !there.contains(line.origin()))
                .forEach(line -> wrongs.add(at("lines", "checklists.edit.stays", line.question())));
    }

    /** A line stays in its section and on its side of each safety line; a new one comes below the safety lines. */
    private void inItsPlace(int index, LineDraft line, @Nullable CheckLine was) {
        int section = sections.indexOf(line.section());
        if (section < 0 || was != null && !was.section().equals(line.section())) {
            wrongs.add(at(field(index, "question"), "checklists.edit.section"));
            return;
        }
        List<LineDraft> before = draft.lines().subList(0, index);
        if (before.stream().anyMatch(other -> sections.indexOf(other.section()) > section)) {
            wrongs.add(at(field(index, "question"), "checklists.edit.sectionOrder"));
        }
        if (before.stream().anyMatch(other -> crossed(other, line))) {
            wrongs.add(at(field(index, "question"), "checklists.edit.overSafety"));
        }
    }

    /** Whether the line that now comes first stood on the other side of the second, and one of them is for safety. */
    private boolean crossed(LineDraft first, LineDraft second) {
        Integer firstPlace = place(first);
        Integer secondPlace = place(second);
        if (secondPlace == null) {
            return false;
        }
        boolean secondIsSafety = stands.lines().get(secondPlace).safety();
        if (firstPlace == null) {
            return secondIsSafety && (secondPlace < leading() || Objects.equals(first.section(), second.section()));
        }
        return firstPlace > secondPlace
                && (secondIsSafety || stands.lines().get(firstPlace).safety());
    }

    /** How many safety lines the list begins with. */
    private int leading() {
        int leading = 0;
        while (leading < stands.lines().size() && stands.lines().get(leading).safety()) {
            leading++;
        }
        return leading;
    }
}
