package freshet.care;

import freshet.checklists.CheckLine;
import freshet.checklists.Checklist;
import freshet.people.Person;
import freshet.people.Typed;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** What was typed on a task's page, by line, and when the work began and ended if not now. */
record TaskForm(
        @Nullable String version,
        @Nullable Map<String, LineForm> line,
        @Nullable String startedAt,
        @Nullable String endedAt,
        @Nullable String note) {

    /** What is kept of a task so far. A tick for safety is not taken over from another person. */
    static TaskForm of(Worksheet sheet, Person me) {
        Map<String, LineForm> lines = new LinkedHashMap<>();
        for (CheckLine check : sheet.checklist().lines()) {
            SavedAnswer saved = sheet.saved().get(check.id());
            boolean mine = saved != null && (!check.safety() || saved.answeredBy() == me.id());
            lines.put(LineForm.key(check.id()), mine ? LineForm.of(saved.answer()) : LineForm.BLANK);
        }
        return new TaskForm(String.valueOf(sheet.task().version()), lines, null, null, null);
    }

    TaskForm complete(Checklist checklist) {
        return new TaskForm(version, LineForm.complete(checklist, line), startedAt, endedAt, note);
    }

    TaskForm at(int nowVersion) {
        return new TaskForm(String.valueOf(nowVersion), line, startedAt, endedAt, note);
    }

    int opened() {
        return version != null && version.matches("\\d{1,9}") ? Integer.parseInt(version) : -1;
    }

    List<Answer> answers(Checklist checklist) {
        return LineForm.answers(checklist, LineForm.complete(checklist, line));
    }

    SignOff signOff(Checklist checklist, Person me, ZoneId zone) {
        Typed typed = new Typed(me);
        SignOff signOff = new SignOff(
                opened(),
                answers(checklist),
                typed.moment("startedAt", startedAt, zone),
                typed.moment("endedAt", endedAt, zone),
                Typed.text(note));
        typed.refuseIfWrong();
        return signOff;
    }
}
