package freshet.care;

import freshet.checklists.CheckLine;
import freshet.checklists.Checklist;
import freshet.people.Typed;
import freshet.pumps.Ratings;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** What was typed at one line of a checklist; {@code none} is the tick "does not apply" beside a field for a number. */
record LineForm(
        @Nullable String answer,
        @Nullable String none,
        @Nullable String asLeft,
        @Nullable String finding,
        @Nullable String severity,
        @Nullable String instrument) {

    static final LineForm BLANK = new LineForm(null, null, null, null, null, null);

    /** What a line is called in a form: "c12", a word of its own, for a bare number would be taken for the row of a list. */
    static String key(long lineId) {
        return "c" + lineId;
    }

    static LineForm of(Answer answer) {
        boolean none = CheckLine.DOES_NOT_APPLY.equals(answer.answer());
        return new LineForm(
                answer.answer(),
                none ? "true" : null,
                answer.asLeft(),
                answer.finding(),
                answer.severity() == null ? null : answer.severity().toString(),
                answer.instrument());
    }

    /** What belongs to this checklist, one for each of its lines whatever a browser sent. */
    static Map<String, LineForm> complete(Checklist checklist, @Nullable Map<String, LineForm> sent) {
        Map<String, LineForm> complete = new LinkedHashMap<>();
        for (CheckLine check : checklist.lines()) {
            LineForm form = sent == null ? null : sent.get(key(check.id()));
            complete.put(key(check.id()), form == null ? BLANK : form);
        }
        return complete;
    }

    static List<Answer> answers(Checklist checklist, Map<String, LineForm> complete) {
        return checklist.lines().stream()
                .map(check -> complete.getOrDefault(key(check.id()), BLANK).typed(check.id()))
                .toList();
    }

    static void askAboutSlips(Checklist checklist, Map<String, LineForm> complete, Ratings ratings, Typed typed) {
        for (CheckLine check : checklist.lines()) {
            LineForm form = complete.getOrDefault(key(check.id()), BLANK);
            check.askAbout(Judgement.field(check, "answer"), form.answer(), ratings, typed);
            check.askAbout(Judgement.field(check, "asLeft"), form.asLeft(), ratings, typed);
        }
        typed.refuseIfWrong();
    }

    Answer typed(long lineId) {
        String text = Typed.text(answer);
        return new Answer(
                lineId,
                "true".equals(none) && text == null ? CheckLine.DOES_NOT_APPLY : text,
                Typed.text(asLeft),
                Typed.text(finding),
                chosen(),
                Typed.text(instrument));
    }

    private @Nullable Integer chosen() {
        return severity != null && severity.matches("[0-4]") ? Integer.valueOf(severity) : null;
    }

    /** Everything that was typed here, as it was typed. */
    List<String> words() {
        return Stream.of(
                        Boolean.parseBoolean(none) ? CheckLine.DOES_NOT_APPLY : null,
                        answer,
                        asLeft,
                        finding,
                        severity,
                        instrument)
                .filter(text -> text != null && !text.isBlank())
                .toList();
    }

    /** For the field of a number: what was typed, but not the word for the tick beside it. */
    public String number() {
        return answer == null || answer.equals(CheckLine.DOES_NOT_APPLY) ? "" : answer;
    }

    public boolean ticked() {
        return none != null || CheckLine.DOES_NOT_APPLY.equals(answer);
    }
}
