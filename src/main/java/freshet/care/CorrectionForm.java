package freshet.care;

import freshet.checklists.Checklist;
import freshet.people.Typed;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** What was typed to correct a record: every line as it should have been, and why. */
record CorrectionForm(
        @Nullable Map<String, LineForm> line,
        @Nullable String why,
        @Nullable String note,
        @Nullable String instrument) {

    static CorrectionForm of(ServiceRecord record, Map<Long, Answer> answers) {
        Map<String, LineForm> lines = new LinkedHashMap<>();
        answers.forEach((id, answer) -> lines.put(LineForm.key(id), LineForm.of(answer)));
        return new CorrectionForm(lines, null, record.note(), record.instrument());
    }

    CorrectionForm complete(Checklist checklist) {
        return new CorrectionForm(LineForm.complete(checklist, line), why, note, instrument);
    }

    Correction correction(Checklist checklist) {
        return new Correction(
                LineForm.answers(checklist, LineForm.complete(checklist, line)),
                Typed.textOrEmpty(why),
                Typed.text(note),
                instrument);
    }
}
