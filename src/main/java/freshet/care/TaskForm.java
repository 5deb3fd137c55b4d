package freshet.care;

import freshet.checklists.CheckLine;
import freshet.checklists.Checklist;
import freshet.people.Person;
import freshet.people.Typed;
import freshet.pumps.Ratings;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What was typed on a task's page, by line, when the work began and ended if not now, what it was measured with, and a note. {@code
 * version} is that of the task, {@code checklist} the version of the checklist that the page showed.
 */
record TaskForm(
        @Nullable String version,
        @Nullable String checklist,
        @Nullable Map<String, LineForm> line,
        @Nullable String startedAt,
        @Nullable String endedAt,
        @Nullable String instrument,
        @Nullable String note) {

    /** What is kept of a task so far. A tick for safety is not taken over from another person. */
    static TaskForm of(Worksheet sheet, Person me, Optional<String> inHand) {
        Map<String, LineForm> lines = new LinkedHashMap<>();
        for (CheckLine check : sheet.checklist().lines()) {
            SavedAnswer saved = sheet.saved().get(check.id());
            boolean mine = saved != null && (!check.safety() || saved.answeredBy() == me.id());
            lines.put(LineForm.key(check.id()), mine ? LineForm.of(saved.answer()) : LineForm.BLANK);
        }
        TaskNotes kept = sheet.notes();
        return new TaskForm(
                        null,
                        null,
                        lines,
                        kept.began(),
                        kept.ended(),
                        kept.instrument() == null ? inHand.orElse(null) : kept.instrument(),
                        kept.note())
                .forTask(sheet);
    }

    /** The same on the page of the task as it is now. */
    TaskForm forTask(Worksheet now) {
        return new TaskForm(
                String.valueOf(now.task().version()),
                String.valueOf(now.checklist().versionId()),
                line,
                startedAt,
                endedAt,
                instrument,
                note);
    }

    TaskForm complete(Checklist itsChecklist) {
        return with(LineForm.complete(itsChecklist, line), note);
    }

    TaskForm with(Map<String, LineForm> itsLines, @Nullable String itsNote) {
        return new TaskForm(version, checklist, itsLines, startedAt, endedAt, instrument, itsNote);
    }

    int opened() {
        return version != null && version.matches("\\d{1,9}") ? Integer.parseInt(version) : -1;
    }

    /** The version of the checklist that the page showed, if it says so. */
    Optional<Long> shown() {
        return checklist != null && checklist.matches("\\d{1,18}")
                ? Optional.of(Long.valueOf(checklist))
                : Optional.empty();
    }

    List<Answer> answers(Checklist itsChecklist) {
        return LineForm.answers(itsChecklist, LineForm.complete(itsChecklist, line));
    }

    /** Asks about answers that are likely slips, unless somebody said that they are so. */
    void askAboutSlips(Checklist itsChecklist, Ratings ratings, Person me) {
        LineForm.askAboutSlips(itsChecklist, LineForm.complete(itsChecklist, line), ratings, new Typed(me));
    }

    TaskNotes notes() {
        return new TaskNotes(startedAt, endedAt, instrument, note);
    }

    SignOff signOff(Checklist itsChecklist, Person me, ZoneId zone) {
        Typed typed = new Typed(me);
        SignOff signOff = new SignOff(
                opened(),
                answers(itsChecklist),
                typed.moment("startedAt", startedAt, zone),
                typed.moment("endedAt", endedAt, zone),
                Typed.text(note),
                instrument);
        typed.refuseIfWrong();
        return signOff;
    }
}
