package freshet.checklists;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.tuple;

import freshet.FreshetTest;
import freshet.measures.UnitSystem;
import freshet.people.NotFound;
import freshet.people.People;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Stale;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;

/** What an owner may make of a checklist, and what stays whatever an owner does. */
@FreshetTest
class VersionTests {

    @Autowired
    Checklists checklists;

    @Autowired
    People people;

    @Autowired
    JdbcClient jdbc;

    Person ilse;
    Checklist opening;

    @BeforeEach
    void owner() {
        ilse = people.welcomeFirstOwner("ilse", "Ilse Marrow", "river at thaw", UnitSystem.SI);
        opening = list("opening-utility-submersible");
    }

    private Checklist list(String code) {
        return checklists.checklists().stream()
                .filter(each -> each.code().equals(code))
                .findFirst()
                .orElseThrow();
    }

    private Checklist publish(List<LineDraft> lines) {
        Checklist stands = checklists.checklist(opening.id());
        return checklists.publish(
                opening.id(), stands.number(), new ChecklistDraft(stands.minutes(), "the test says so", lines), ilse);
    }

    private List<LineDraft> lines() {
        return new ArrayList<>(
                ChecklistDraft.of(checklists.checklist(opening.id())).lines());
    }

    private List<LineDraft> with(String question, UnaryOperator<LineDraft> change) {
        return lines().stream()
                .map(line -> line.question().startsWith(question) ? change.apply(line) : line)
                .toList();
    }

    private List<String> refusals(List<LineDraft> lines) {
        Refused refused = catchThrowableOfType(Refused.class, () -> publish(lines));
        assertThat(refused).as("refused").isNotNull();
        return refused.wrongs().stream()
                .map(wrong -> wrong.field().replaceAll("\\d+", "n") + " " + wrong.code())
                .toList();
    }

    private static LineDraft reworded(LineDraft line, String question) {
        return changed(line, question, line.failSeverity(), line.required(), line.passLow(), line.passHigh());
    }

    private static LineDraft changed(
            LineDraft line,
            String question,
            @Nullable Integer severity,
            boolean required,
            @Nullable Double passLow,
            @Nullable Double passHigh) {
        return new LineDraft(
                line.origin(),
                line.section(),
                question,
                line.hint(),
                line.caution(),
                line.kind(),
                line.unit(),
                passLow,
                passHigh,
                line.watchLow(),
                line.watchHigh(),
                line.choices(),
                severity,
                required,
                line.mayNotApply(),
                line.asLeft(),
                line.asksInstrument(),
                line.competence(),
                line.source());
    }

    static LineDraft own(String section, String question) {
        return new LineDraft(
                null,
                section,
                question,
                null,
                null,
                AnswerKind.YES_NO,
                null,
                null,
                null,
                null,
                null,
                List.of(),
                2,
                true,
                false,
                false,
                false,
                null,
                "our own practice");
    }

    @Test
    void publishesTheNextVersionAndKeepsTheOneBefore() {
        List<LineDraft> lines = with("Is the strainer", line -> reworded(line, "Is the screen clean?"));
        Checklist next = checklists.publish(opening.id(), 1, new ChecklistDraft(40, "We say screen", lines), ilse);

        assertThat(next.number()).isEqualTo(2);
        assertThat(next.minutes()).isEqualTo(40);
        assertThat(checklists.version(opening.id(), 1)).isEqualTo(opening);
        assertThat(checklists.version(opening.versionId())).isEqualTo(opening);
        assertThat(checklists.editions(opening.id())).first().satisfies(edition -> {
            assertThat(edition.number()).isEqualTo(2);
            assertThat(edition.publishedBy()).isEqualTo("Ilse Marrow");
            assertThat(edition.note()).isEqualTo("We say screen");
            assertThat(edition.lines()).isEqualTo(opening.lines().size());
        });
        assertThat(Change.between(opening, next))
                .extracting(Change::kind, Change::words)
                .containsExactly(
                        tuple(Change.Kind.MINUTES, "35 → 40"), tuple(Change.Kind.CHANGED, "Is the screen clean?"));
    }

    @Test
    void publishesNothingWhenNothingIsDifferent() {
        assertThat(publish(lines())).isEqualTo(opening);
        assertThat(checklists.editions(opening.id())).hasSize(1);
    }

    @Test
    void takesLinesOutAndPutsNewOnesIn() {
        List<LineDraft> lines = lines();
        lines.removeIf(line -> line.question().startsWith("Gap"));
        lines.add(own("Kit, and the record", "Is the rope dry?"));
        Checklist next = publish(lines);

        assertThat(next.lines()).hasSameSizeAs(opening.lines());
        assertThat(next.lines().get(next.lines().size() - 1).origin())
                .isEqualTo(next.lines().get(next.lines().size() - 1).id());
        assertThat(Change.between(opening, next))
                .extracting(Change::kind)
                .containsExactly(Change.Kind.ADDED, Change.Kind.TAKEN_OUT);
        Checklist third = publish(with("Is the rope", line -> reworded(line, "Is the rope dry and whole?")));
        assertThat(Change.between(next, third))
                .extracting(Change::kind, Change::words)
                .containsExactly(tuple(Change.Kind.CHANGED, "Is the rope dry and whole?"));
    }

    @Test
    void refusesAStaleDraft() {
        publish(with("Anything", line -> reworded(line, "Anything else?")));
        assertThatThrownBy(() -> checklists.publish(opening.id(), 1, ChecklistDraft.of(opening), ilse))
                .isInstanceOf(Stale.class);
        assertThatThrownBy(() -> checklists.version(opening.id(), 9)).isInstanceOf(NotFound.class);
        assertThatThrownBy(() -> checklists.publish(0, 1, ChecklistDraft.of(opening), ilse))
                .isInstanceOf(NotFound.class);
    }

    @Test
    void rewordsASafetyLineAndNeverLetsItGo() {
        Checklist next = publish(with("Unplugged", line -> reworded(line, "Plug is out and in my pocket")));
        assertThat(next.lines().get(0).question()).isEqualTo("Plug is out and in my pocket");
        assertThat(next.lines().get(0).safety()).isTrue();

        assertThat(refusals(lines().subList(1, lines().size()))).containsExactly("lines checklists.edit.stays");
        assertThat(refusals(with("Plug is out", line -> changed(line, line.question(), null, false, null, null))))
                .containsExactly("lines[n].required checklists.edit.requiredStays");
        List<LineDraft> second = lines();
        second.add(1, second.remove(0));
        assertThat(refusals(second)).contains("lines[n].question checklists.edit.overSafety");
        List<LineDraft> above = lines();
        above.add(0, own("Before you start", "Coffee?"));
        assertThat(refusals(above)).containsExactly("lines[n].question checklists.edit.overSafety");
    }

    @Test
    void movesNothingAcrossTheSecondUnplugging() {
        opening = list("closing-utility-submersible");
        List<LineDraft> lines = lines();
        int flush = IntStream.range(0, lines.size())
                .filter(i -> lines.get(i).question().startsWith("Flushed"))
                .findFirst()
                .orElseThrow();
        assertThat(lines.get(flush + 1).question()).startsWith("Unplugged again");
        Collections.swap(lines, flush, flush + 1);
        assertThat(refusals(lines)).containsExactly("lines[n].question checklists.edit.overSafety");
    }

    @Test
    void holdsACordAtSeverityFour() {
        String cord = "Are cord, plug";
        for (Integer severity : new Integer[] {3, 0, null}) {
            assertThat(refusals(
                            with(cord, line -> changed(line, line.question(), severity, line.required(), null, null))))
                    .containsExactly("lines[n].failSeverity checklists.edit.severityHeld");
        }
        assertThat(refusals(with(cord, line -> changed(line, line.question(), 4, false, null, null))))
                .containsExactly("lines[n].required checklists.edit.requiredStays");
        assertThat(refusals(lines().stream()
                        .filter(line -> !line.question().startsWith(cord))
                        .toList()))
                .containsExactly("lines checklists.edit.stays");
        assertThat(refusals(with(
                        "Earth continuity", line -> changed(line, line.question(), 4, line.required(), null, null))))
                .containsExactly(
                        "lines[n].passHigh checklists.edit.limits.passMissing",
                        "lines[n].passHigh checklists.edit.limits.stays");
    }

    @Test
    void keepsWhoMayMeasure() {
        assertThat(refusals(with(
                        "Insulation",
                        line -> new LineDraft(
                                line.origin(),
                                line.section(),
                                line.question(),
                                null,
                                null,
                                line.kind(),
                                line.unit(),
                                line.passLow(),
                                null,
                                line.watchLow(),
                                null,
                                List.of(),
                                4,
                                true,
                                true,
                                false,
                                line.asksInstrument(),
                                null,
                                line.source()))))
                .containsExactly(
                        "lines[n].competence checklists.edit.competenceStays",
                        "lines[n].mayNotApply checklists.edit.appliesStays");
    }

    @Test
    void saysWhatIsWrongAtItsPlace() {
        assertThat(refusals(with("Is the strainer", line -> reworded(line, " "))))
                .containsExactly("lines[n].question checklists.edit.question");
        assertThat(refusals(with(
                        "Running amps",
                        line -> changed(line, line.question(), line.failSeverity(), line.required(), 1.2, 1.0))))
                .containsExactly("lines[n].passHigh checklists.edit.limits.pass");
        LineDraft choice = new LineDraft(
                null,
                "Wet",
                "Which?",
                null,
                null,
                AnswerKind.CHOICE,
                null,
                null,
                null,
                null,
                null,
                List.of(new Choice(Verdict.WATCH, "So so"), new Choice(Verdict.FAIL, "So so")),
                null,
                true,
                false,
                false,
                false,
                null,
                "our own practice");
        assertThat(refusals(added(choice)))
                .containsExactly(
                        "lines[n].choices[n].words checklists.edit.choices.twice",
                        "lines[n].choices checklists.edit.choices.pass");
        LineDraft number = new LineDraft(
                null,
                "Wet",
                "How much?",
                null,
                null,
                AnswerKind.NUMBER,
                "furlongs",
                Double.NaN,
                -1.0,
                3.0,
                null,
                List.of(),
                9,
                true,
                false,
                false,
                false,
                null,
                "");
        assertThat(refusals(added(number)))
                .containsExactly(
                        "lines[n].source checklists.edit.source",
                        "lines[n].failSeverity checklists.edit.severity",
                        "lines[n].unit checklists.edit.unit",
                        "lines[n].passLow checklists.edit.limits.number",
                        "lines[n].passHigh checklists.edit.limits.negative");
        List<LineDraft> many = lines();
        while (many.size() <= Revision.MOST_LINES) {
            many.add(own("Kit, and the record", "Line " + many.size()));
        }
        assertThat(refusals(many)).containsExactly("lines checklists.edit.tooMany");
        assertThat(publish(many.subList(0, Revision.MOST_LINES)).lines()).hasSize(Revision.MOST_LINES);
    }

    private List<LineDraft> added(LineDraft line) {
        List<LineDraft> lines = lines();
        int last = IntStream.range(0, lines.size())
                .filter(i -> lines.get(i).section().equals(line.section()))
                .max()
                .orElseThrow();
        lines.add(last + 1, line);
        return lines;
    }

    @Test
    void neverChangesWhatWasPublished() {
        for (String change : List.of(
                "update check_line set question = 'x'",
                "delete from check_line",
                "update checklist_version set minutes = 1",
                "delete from checklist_version")) {
            assertThatThrownBy(() -> jdbc.sql(change).update())
                    .as(change)
                    .isInstanceOf(DataIntegrityViolationException.class);
        }
    }

    /** Any sequence of edits, allowed or not: every older version stays as it was, to the byte, and safety stays first and whole. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void keepsHistoryAndSafetyThroughAnySequenceOfEdits(long seed) {
        RandomEdits edits = new RandomEdits(new Random(seed));
        List<Checklist> all = checklists.checklists();
        Checklist first = all.get((int) (seed * 5 % all.size()));
        TreeMap<Integer, String> rows = new TreeMap<>();
        rows.put(1, rows(first.id(), 1));
        int refused = 0;
        for (int i = 0; i < 60; i++) {
            Checklist stands = checklists.checklist(first.id());
            try {
                Checklist now = checklists.publish(first.id(), stands.number(), edits.of(stands), ilse);
                rows.putIfAbsent(now.number(), rows(first.id(), now.number()));
            } catch (Refused wrong) {
                refused++;
                assertThat(checklists.checklist(first.id())).isEqualTo(stands);
            }
            rows.forEach(
                    (number, written) -> assertThat(rows(first.id(), number)).isEqualTo(written));
            holds(first, checklists.checklist(first.id()));
        }
        assertThat(rows.size()).as("published").isGreaterThan(10);
        assertThat(refused).as("refused").isGreaterThan(10);
    }

    /** Every column of every row of a version. */
    private String rows(long checklistId, int number) {
        return jdbc.sql("""
                        select string_agg(v::text || l::text, e'\\n' order by l.ordinal)
                        from checklist_version v join check_line l on l.checklist_version_id = v.id
                        where v.checklist_id = ? and v.number = ?""").params(checklistId, number).query(String.class).single();
    }

    private static void holds(Checklist first, Checklist now) {
        assertThat(now.lines()).hasSizeBetween(1, Revision.MOST_LINES);
        assertThat(origins(now, true)).isEqualTo(origins(first, true));
        int leading = 0;
        while (first.lines().get(leading).safety()) {
            assertThat(now.lines().get(leading).safety()).isTrue();
            leading++;
        }
        for (CheckLine line : first.lines()) {
            int place = place(now, line);
            if (line.stays()) {
                CheckLine kept = now.lines().get(place);
                assertThat(kept.required()).isEqualTo(line.required() || kept.required());
                assertThat(kept.mayNotApply() && !line.mayNotApply()).isFalse();
                assertThat(kept.competence())
                        .isEqualTo(line.competence() == null ? kept.competence() : line.competence());
                assertThat(kept.kind()).isEqualTo(line.kind());
                if (line.heldSeverity() != null) {
                    assertThat(kept.failSeverity()).isGreaterThanOrEqualTo(line.heldSeverity());
                }
            }
            for (CheckLine safety :
                    first.lines().stream().filter(CheckLine::safety).toList()) {
                if (place >= 0 && safety.origin() != line.origin()) {
                    assertThat(place < place(now, safety)).isEqualTo(line.ordinal() < safety.ordinal());
                }
            }
        }
        List<String> sections = now.lines().stream().map(CheckLine::section).toList();
        for (int i = 1; i < sections.size(); i++) {
            assertThat(first.sections().indexOf(sections.get(i)))
                    .isGreaterThanOrEqualTo(first.sections().indexOf(sections.get(i - 1)));
        }
    }

    private static List<Long> origins(Checklist checklist, boolean safety) {
        return checklist.lines().stream()
                .filter(line -> line.safety() == safety)
                .map(CheckLine::origin)
                .toList();
    }

    private static int place(Checklist checklist, CheckLine line) {
        return IntStream.range(0, checklist.lines().size())
                .filter(i -> checklist.lines().get(i).origin() == line.origin())
                .findFirst()
                .orElse(-1);
    }
}
