package freshet.care;

import freshet.checklists.Checklist;
import freshet.people.Person;
import freshet.people.Typed;
import freshet.pumps.Ratings;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** What was typed to correct a record: every line as it should have been, and why. */
record CorrectionForm(
        @Nullable Map<String, LineForm> line,
        @Nullable String why,
        @Nullable String note,
        @Nullable String instrument) {

    /** What everything was measured with stands once, above the lines; else each line says what it was. */
    static CorrectionForm of(ServiceRecord record, Checklist checklist, Map<Long, Answer> answers) {
        List<@Nullable String> used = record.lines().stream()
                .filter(line -> answers.containsKey(line.checkLineId()) && line.answer() != null)
                .filter(line -> checklist.line(line.checkLineId()).measured())
                .map(RecordLine::instrument)
                .distinct()
                .toList();
        String everywhere = used.size() == 1 ? used.get(0) : null;
        Map<String, LineForm> lines = new LinkedHashMap<>();
        answers.forEach((id, answer) ->
                lines.put(LineForm.key(id), LineForm.of(everywhere == null ? answer : answer.with(null))));
        return new CorrectionForm(lines, null, record.note(), everywhere);
    }

    CorrectionForm complete(Checklist checklist) {
        return new CorrectionForm(LineForm.complete(checklist, line), why, note, instrument);
    }

    /** Asks about answers that are likely slips, unless somebody said that they are so. */
    void askAboutSlips(Checklist checklist, Ratings ratings, Person me) {
        LineForm.askAboutSlips(checklist, LineForm.complete(checklist, line), ratings, new Typed(me));
    }

    Correction correction(Checklist checklist) {
        return new Correction(
                LineForm.answers(checklist, LineForm.complete(checklist, line)),
                Typed.textOrEmpty(why),
                Typed.text(note),
                instrument);
    }
}
