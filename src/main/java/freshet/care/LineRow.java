package freshet.care;

import freshet.checklists.AnswerKind;
import freshet.checklists.CheckLine;
import freshet.checklists.Judged;
import freshet.checklists.LimitWords;
import freshet.checklists.NotAnAnswer;
import freshet.checklists.Verdict;
import freshet.measures.UnitSystem;
import freshet.people.Competence;
import freshet.people.Person;
import freshet.pumps.Ratings;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * One line of a checklist as its page shows it to one person. {@code heading} is its section where that begins; {@code verdict} is what
 * the answers so far come to; {@code may} names those who may answer a line that is locked to this person; {@code elsewhere} is an
 * answer that stands from somebody else; {@code firstMeasured} is where a page asks what it is measured with.
 */
record LineRow(
        CheckLine check,
        @Nullable String heading,
        List<String> cautions,
        @Nullable String limits,
        @Nullable String unit,
        List<Option> options,
        LineForm typed,
        @Nullable Verdict verdict,
        boolean locked,
        List<String> may,
        @Nullable SavedAnswer elsewhere,
        boolean firstMeasured) {

    /** A press of a choice: its value, its message key or its own words, and whether it calls for a finding. */
    record Option(
            String value, @Nullable String code, @Nullable String words, boolean fails) {}

    /** Everything that a page needs to show lines to a person. */
    record Reader(Person me, Ratings ratings, Map<Competence, List<String>> competent, LimitWords words) {}

    static List<LineRow> rows(
            List<CheckLine> checks, Map<String, LineForm> forms, Map<Long, SavedAnswer> saved, Reader reader) {
        List<LineRow> rows = new ArrayList<>();
        String section = "";
        boolean measured = false;
        for (CheckLine check : checks) {
            LineForm form = forms.getOrDefault(LineForm.key(check.id()), LineForm.BLANK);
            rows.add(row(
                    check,
                    check.section().equals(section) ? null : check.section(),
                    form,
                    saved.get(check.id()),
                    reader,
                    !measured && mayMeasure(check, reader)));
            section = check.section();
            measured = measured || mayMeasure(check, reader);
        }
        return rows;
    }

    private static boolean mayMeasure(CheckLine check, Reader reader) {
        return check.measured() && !Judgement.locked(check, reader.me());
    }

    private static LineRow row(
            CheckLine check,
            @Nullable String heading,
            LineForm form,
            @Nullable SavedAnswer saved,
            Reader reader,
            boolean firstMeasured) {
        UnitSystem system = reader.me().unitSystem();
        boolean others = saved != null && saved.answeredBy() != reader.me().id();
        return new LineRow(
                check,
                heading,
                check.caution() == null ? List.of() : check.caution().lines().toList(),
                check.limitsInWords(reader.ratings(), reader.words()),
                check.unitFor(system),
                options(check),
                form,
                verdict(check, form, system, reader.ratings()),
                Judgement.locked(check, reader.me()),
                check.competence() == null ? List.of() : reader.competent().getOrDefault(check.competence(), List.of()),
                others ? saved : null,
                firstMeasured);
    }

    private static @Nullable Verdict verdict(CheckLine check, LineForm form, UnitSystem system, Ratings ratings) {
        try {
            Answer typed = form.typed(check.id());
            Judged left = check.asLeft() ? check.judge(typed.asLeft(), system, ratings) : null;
            Judged counts = left == null || left.verdict() == Verdict.LEFT
                    ? check.judge(typed.answer(), system, ratings)
                    : left;
            return counts.verdict() == Verdict.LEFT ? null : counts.verdict();
        } catch (NotAnAnswer notYet) {
            return null;
        }
    }

    private static List<Option> options(CheckLine check) {
        List<Option> options = new ArrayList<>();
        if (check.kind() == AnswerKind.YES_NO) {
            options.add(new Option(CheckLine.YES, "care.answer.YES", null, false));
            options.add(new Option(CheckLine.NO, "care.answer.NO", null, true));
        }
        check.choices()
                .forEach(choice -> options.add(new Option(
                        choice.words(),
                        null,
                        choice.words(),
                        choice.verdict() == Verdict.FAIL || choice.verdict() == Verdict.WATCH)));
        if (check.mayNotApply() && !options.isEmpty()) {
            options.add(new Option(CheckLine.DOES_NOT_APPLY, "care.answer.DOES_NOT_APPLY", null, false));
        }
        return options;
    }

    /** The field's name and id without its part. */
    public String name() {
        return "line[" + LineForm.key(check.id()) + "]";
    }

    /** How the choices are laid out. */
    public String layout() {
        boolean brief = options.stream()
                .allMatch(option -> option.words() == null || option.words().length() <= 9);
        return !brief ? "pick down answer" : options.size() == 3 ? "pick three answer" : "pick four answer";
    }

    public boolean answered() {
        return verdict != null;
    }

    /** Whether what was found, or what was typed, opens the place for a finding. */
    public boolean speaksOfFinding() {
        return verdict == Verdict.FAIL
                || typed.finding() != null && !typed.finding().isBlank()
                || typed.severity() != null;
    }

    /** Whether a browser can tell by the press alone that a finding is called for. */
    public boolean pressTells() {
        return !options.isEmpty();
    }

    public boolean namesInstrument() {
        return typed.instrument() != null && !typed.instrument().isBlank();
    }

    public boolean leftOtherwise() {
        return typed.asLeft() != null && !typed.asLeft().isBlank();
    }
}
