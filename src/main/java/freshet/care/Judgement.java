package freshet.care;

import static freshet.people.Refused.Wrong.at;

import freshet.checklists.CheckLine;
import freshet.checklists.Checklist;
import freshet.checklists.Judged;
import freshet.checklists.LimitWords;
import freshet.checklists.NotAnAnswer;
import freshet.checklists.Verdict;
import freshet.findings.Finding;
import freshet.people.Competence;
import freshet.people.Person;
import freshet.people.Refused.Wrong;
import freshet.people.Typed;
import freshet.pumps.Ratings;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** What a person's answers come to, line by line, and everything that keeps them from being signed. */
final class Judgement {

    private static final Set<Verdict> MEASURED = EnumSet.of(Verdict.PASS, Verdict.WATCH, Verdict.FAIL, Verdict.NOTED);

    private final Ratings ratings;
    private final Person signer;
    private final Function<CheckLine, @Nullable String> otherwise;
    private final List<Line> lines = new ArrayList<>();
    private final List<Wrong> wrongs = new ArrayList<>();

    /** One line with its answer as found and as left; {@code finding} is null when it makes none. */
    record Line(
            CheckLine check,
            Judged found,
            @Nullable Judged left,
            @Nullable String finding,
            int severity,
            @Nullable String instrument) {

        /** What counts is how the pump was left. */
        Judged counts() {
            return left == null ? found : left;
        }
    }

    private Judgement(Ratings ratings, Person signer, Function<CheckLine, @Nullable String> otherwise) {
        this.ratings = ratings;
        this.signer = signer;
        this.otherwise = otherwise;
    }

    /** {@code otherwise} is what a line was measured with when it names nothing. */
    static Judgement of(
            Checklist checklist,
            Ratings ratings,
            Person signer,
            Map<Long, Answer> answers,
            Function<CheckLine, @Nullable String> otherwise) {
        Judgement judgement = new Judgement(ratings, signer, otherwise);
        for (CheckLine check : checklist.lines()) {
            Answer none = new Answer(check.id(), null, null, null, null);
            judgement.judge(check, answers.getOrDefault(check.id(), none));
        }
        return judgement;
    }

    static boolean locked(CheckLine check, Person person) {
        return check.competence() != null && !person.competentFor(check.competence());
    }

    private void judge(CheckLine check, Answer answer) {
        boolean locked = locked(check, signer);
        if (locked && !answer.empty()) {
            wrongs.add(at(field(check, "answer"), "care.line.notYours", check.competence()));
            return;
        }
        Judged found = read(check, answer.answer(), "answer");
        Judged left = check.asLeft() && !blank(answer.asLeft()) ? read(check, answer.asLeft(), "asLeft") : null;
        if (found == null || left == null && check.asLeft() && !blank(answer.asLeft())) {
            return;
        }
        if (check.safety() && found.verdict() != Verdict.PASS) {
            wrongs.add(at(field(check, "answer"), locked ? "care.line.safetyNotYours" : "care.line.safetyFirst"));
        } else if (found.verdict() == Verdict.LEFT && (check.required() && !locked || left != null)) {
            wrongs.add(noAnswer(check));
        }
        conclude(check, answer, found, left);
    }

    private @Nullable Judged read(CheckLine check, @Nullable String typed, String part) {
        try {
            return check.judge(typed, signer.unitSystem(), ratings);
        } catch (NotAnAnswer wrong) {
            wrongs.add(at(field(check, part), wrong.code(), wrong.arguments()));
            return null;
        }
    }

    private void conclude(CheckLine check, Answer answer, Judged found, @Nullable Judged left) {
        Verdict verdict = left == null ? found.verdict() : left.verdict();
        boolean failed = verdict == Verdict.FAIL && check.failSeverity() != null && !check.safety();
        int proposed = failed && check.failSeverity() != null ? check.failSeverity() : verdict == Verdict.WATCH ? 1 : 0;
        int severity = answer.severity() == null ? proposed : answer.severity();
        boolean words = !blank(answer.finding());
        if (!words && (failed || severity > proposed)) {
            wrongs.add(noWords(check));
        }
        if (failed && severity < proposed) {
            wrongs.add(at(field(check, "severity"), "care.finding.lower", proposed));
        }
        if (severity < 0 || severity > Finding.DANGER) {
            wrongs.add(at(field(check, "severity"), "care.finding.severity"));
        }
        String instrument = MEASURED.contains(verdict) ? measuredWith(check, answer) : null;
        lines.add(new Line(check, found, left, words ? answer.finding() : null, severity, instrument));
    }

    private @Nullable String measuredWith(CheckLine check, Answer answer) {
        if (!check.measured()) {
            return null;
        }
        String own = Typed.text(answer.instrument());
        String instrument = own == null ? otherwise.apply(check) : own;
        if (own != null && own.length() > Desk.LONGEST_INSTRUMENT) {
            wrongs.add(at(field(check, "instrument"), "care.instrument.long", Desk.LONGEST_INSTRUMENT));
        }
        if (instrument == null && check.asksInstrument()) {
            wrongs.add(at(field(check, "instrument"), "care.instrument.missing"));
        }
        return instrument;
    }

    /** The lines with a finding, as their drafts' content. */
    List<Line> findings() {
        return lines.stream().filter(line -> line.finding() != null).toList();
    }

    /** What the signer would have to be competent for to answer the required lines that were left. */
    Set<Competence> left() {
        return lines.stream()
                .filter(line -> locked(line.check(), signer) && line.check().required())
                .filter(line -> line.found().verdict() == Verdict.LEFT)
                .map(line -> line.check().competence())
                .filter(Objects::nonNull)
                .collect(Collectors.toSet());
    }

    /** The lines as they are signed, the limits in the words of who signs; what was measured says with what. */
    List<RecordLine> recordLines(LimitWords words) {
        return lines.stream().map(line -> recordLine(line, words)).toList();
    }

    private RecordLine recordLine(Line line, LimitWords words) {
        CheckLine check = line.check();
        return new RecordLine(
                check.ordinal(),
                check.id(),
                check.section(),
                check.question(),
                line.found().answer(),
                line.counts().number(),
                check.unit(),
                check.limitsInWords(ratings, words),
                line.counts().verdict(),
                line.left() == null ? null : line.left().answer(),
                line.instrument());
    }

    List<Wrong> wrongs() {
        return wrongs;
    }

    static Wrong noAnswer(CheckLine check) {
        return at(field(check, "answer"), "care.line.missing");
    }

    static Wrong noWords(CheckLine check) {
        return at(field(check, "finding"), "care.finding.missing");
    }

    /** The name of a part of a line in the form. */
    static String field(CheckLine check, String part) {
        return "line[" + LineForm.key(check.id()) + "]." + part;
    }

    private static boolean blank(@Nullable String text) {
        return text == null || text.isBlank();
    }
}
