package freshet.checklists;

import static freshet.people.Refused.Wrong.at;

import freshet.people.Refused.Wrong;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** What is wrong with one line of a draft, and the line that it becomes; {@code was} is the line that it changes, null for a new one. */
final class LineChecks {

    static final int LONGEST_QUESTION = 200;
    static final int LONGEST_TEXT = 600;
    static final int LONGEST_WORDS = 80;
    static final int MOST_CHOICES = 8;

    private final LineDraft line;
    private final @Nullable CheckLine was;
    private final String path;
    private final List<Wrong> wrongs = new ArrayList<>();

    private LineChecks(LineDraft line, @Nullable CheckLine was, String path) {
        this.line = line;
        this.was = was;
        this.path = path;
    }

    static List<Wrong> wrongs(LineDraft line, @Nullable CheckLine was, String path) {
        return new LineChecks(line, was, path).wrongs();
    }

    /** The line as it is published; only for a draft with nothing wrong. Limits out of order count as none. */
    static CheckLine checkLine(LineDraft line, @Nullable CheckLine was, int ordinal) {
        boolean number = line.kind() == AnswerKind.NUMBER;
        boolean judged = line.kind() != AnswerKind.TEXT;
        return new CheckLine(
                0,
                ordinal,
                line.section(),
                line.question(),
                line.hint(),
                line.caution(),
                line.kind(),
                number ? line.unit() : null,
                number && inOrder(line)
                        ? new Limits(line.passLow(), line.passHigh(), line.watchLow(), line.watchHigh())
                        : Limits.NONE,
                was == null ? null : was.ratedBy(),
                line.kind() == AnswerKind.CHOICE ? line.choices() : List.of(),
                judged ? line.failSeverity() : null,
                was == null ? null : was.heldSeverity(),
                line.required(),
                was != null && was.safety(),
                line.mayNotApply(),
                line.asLeft(),
                judged && line.asksInstrument(),
                line.competence(),
                line.source(),
                was == null ? 0 : was.origin());
    }

    private List<Wrong> wrongs() {
        words();
        severity();
        switch (line.kind()) {
            case NUMBER -> number();
            case CHOICE -> choices();
            default -> {}
        }
        if (was != null) {
            kept(was);
        }
        return wrongs;
    }

    private void wrong(String part, String code, Object... arguments) {
        wrongs.add(at(path + part, code, arguments));
    }

    private void words() {
        if (line.question().isBlank()) {
            wrong("question", "checklists.edit.question");
        }
        if (line.source() == null || line.source().isBlank()) {
            wrong("source", "checklists.edit.source");
        }
        tooLong("question", line.question(), LONGEST_QUESTION);
        tooLong("hint", line.hint(), LONGEST_TEXT);
        tooLong("caution", line.caution(), LONGEST_TEXT);
        tooLong("source", line.source(), LONGEST_TEXT);
    }

    private void tooLong(String part, @Nullable String text, int longest) {
        if (text != null && text.length() > longest) {
            wrong(part, "checklists.edit.tooLong", longest);
        }
    }

    private void severity() {
        Integer severity = line.failSeverity();
        if (severity != null && (severity < 0 || severity > CheckLine.MOST_SEVERE)) {
            wrong("failSeverity", "checklists.edit.severity");
        }
    }

    private void number() {
        if (line.unit() == null || !LineUnit.known(line.unit())) {
            wrong("unit", "checklists.edit.unit", String.join(", ", LineUnit.all()));
        }
        sane("passLow", line.passLow());
        sane("passHigh", line.passHigh());
        sane("watchLow", line.watchLow());
        sane("watchHigh", line.watchHigh());
        if (above(line.passLow(), line.passHigh())) {
            wrong("passHigh", "checklists.edit.limits.pass");
        }
        if (above(line.watchLow(), line.passLow())) {
            wrong("watchLow", "checklists.edit.limits.watchLow");
        }
        if (above(line.passHigh(), line.watchHigh())) {
            wrong("watchHigh", "checklists.edit.limits.watchHigh");
        }
        if (line.watchLow() != null && line.passLow() == null) {
            wrong("passLow", "checklists.edit.limits.passMissing");
        }
        if (line.watchHigh() != null && line.passHigh() == null) {
            wrong("passHigh", "checklists.edit.limits.passMissing");
        }
    }

    private void sane(String part, @Nullable Double limit) {
        if (limit == null) {
            return;
        }
        if (!Double.isFinite(limit)) {
            wrong(part, "checklists.edit.limits.number");
        } else if (limit < 0 && !LineUnit.mayBeNegative(line.unit())) {
            wrong(part, "checklists.edit.limits.negative");
        }
    }

    private static boolean inOrder(LineDraft line) {
        return !above(line.passLow(), line.passHigh())
                && !above(line.watchLow(), line.passLow())
                && !above(line.passHigh(), line.watchHigh());
    }

    private static boolean above(@Nullable Double low, @Nullable Double high) {
        return low != null && high != null && low > high;
    }

    private void choices() {
        List<Choice> choices = line.choices();
        if (choices.size() < 2 || choices.size() > MOST_CHOICES) {
            wrong("choices", "checklists.edit.choices.count", MOST_CHOICES);
        }
        Set<String> words = new HashSet<>();
        for (int i = 0; i < choices.size(); i++) {
            String each = choices.get(i).words();
            if (each.isBlank() || each.length() > LONGEST_WORDS) {
                wrong("choices[" + i + "].words", "checklists.edit.choices.words", LONGEST_WORDS);
            } else if (!words.add(each)) {
                wrong("choices[" + i + "].words", "checklists.edit.choices.twice");
            }
        }
        if (choices.stream().noneMatch(choice -> choice.verdict() == Verdict.PASS)) {
            wrong("choices", "checklists.edit.choices.pass");
        }
        if (line.failSeverity() != null && choices.stream().noneMatch(choice -> choice.verdict() == Verdict.FAIL)) {
            wrong("choices", "checklists.edit.choices.fail");
        }
    }

    /** What an owner may not take from a line that stands. */
    private void kept(CheckLine stood) {
        if (stood.kind() != line.kind()) {
            wrong("question", "checklists.edit.kindStays");
        }
        boolean unitStays = stood.ratedBy() != null || stood.stays();
        if (unitStays && !Objects.equals(stood.unit(), line.unit())) {
            wrong("unit", "checklists.edit.unitStays");
        }
        if (stood.competence() != null && stood.competence() != line.competence()) {
            wrong("competence", "checklists.edit.competenceStays");
        }
        if (!stood.stays()) {
            return;
        }
        if (stood.required() && !line.required()) {
            wrong("required", "checklists.edit.requiredStays");
        }
        if (!stood.mayNotApply() && line.mayNotApply()) {
            wrong("mayNotApply", "checklists.edit.appliesStays");
        }
        Integer held = stood.heldSeverity();
        if (held != null && (line.failSeverity() == null || line.failSeverity() < held)) {
            wrong("failSeverity", "checklists.edit.severityHeld", held);
        }
        if (stood.limits().passLow() != null && line.passLow() == null) {
            wrong("passLow", "checklists.edit.limits.stays");
        }
        if (stood.limits().passHigh() != null && line.passHigh() == null) {
            wrong("passHigh", "checklists.edit.limits.stays");
        }
    }
}
