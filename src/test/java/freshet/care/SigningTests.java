package freshet.care;

import static freshet.care.CareYard.allPass;
import static freshet.care.CareYard.line;
import static freshet.care.CareYard.with;
import static freshet.care.CareYard.without;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import freshet.FreshetTest;
import freshet.TestClock;
import freshet.board.Why;
import freshet.checklists.CheckLine;
import freshet.checklists.Phase;
import freshet.checklists.Verdict;
import freshet.findings.Finding;
import freshet.findings.Findings;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Stale;
import freshet.pumps.Unit;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Collectors;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;

@FreshetTest
class SigningTests {

    private static final Instant MORNING = Instant.parse("2026-03-14T14:00:00Z");

    @Autowired
    Care care;

    @Autowired
    Findings findings;

    @Autowired
    CareYard yard;

    @Autowired
    TestClock clock;

    Person ilse;
    Person teo;
    Unit unit;
    Task opening;

    @BeforeEach
    void springMorning() {
        clock.set(MORNING);
        ilse = yard.ilse();
        teo = yard.teo();
        unit = yard.unit("BF-04");
        opening = only(Phase.OPENING, 2026);
    }

    private Task only(Phase phase, int year) {
        return care.tasksOf(unit.id()).stream()
                .filter(task -> task.phase() == phase && task.opensOn().getYear() == year)
                .findFirst()
                .orElseThrow();
    }

    private Worksheet sheet() {
        return care.worksheet(opening.id());
    }

    private long sign(List<Answer> answers, Person by) {
        return care.sign(opening.id(), SignOff.of(care.task(opening.id()).version(), answers), by);
    }

    private static Set<String> codesAt(CheckLine line, ThrowingCallable refused) {
        Refused refusal = catchThrowableOfType(Refused.class, refused);
        assertThat(refusal).as("refused").isNotNull();
        return refusal.wrongs().stream()
                .filter(wrong -> wrong.field().startsWith("line[c" + line.id() + "]"))
                .map(wrong -> wrong.field().substring(wrong.field().indexOf('.') + 1) + " " + wrong.code())
                .collect(Collectors.toSet());
    }

    @Test
    void signsARecordThatSaysWhoWhereWhenAndWhat() {
        clock.advance(Duration.ofMinutes(35));
        long id = sign(allPass(sheet(), ilse), ilse);

        ServiceRecord record = care.record(id);
        assertThat(record.title()).isEqualTo("Opening 2026");
        assertThat(record.tag()).isEqualTo("BF-04");
        assertThat(record.serial()).isEqualTo("S-BF-04");
        assertThat(record.place()).isEqualTo("Brackenfold Pump Yard");
        assertThat(record.signedName()).isEqualTo("Ilse Marrow");
        assertThat(record.signedAt()).isEqualTo(MORNING.plus(Duration.ofMinutes(35)));
        assertThat(record.lines()).hasSameSizeAs(sheet().checklist().lines());
        RecordLine amps = record.lines().stream()
                .filter(line -> line.question().startsWith("Running amps"))
                .findFirst()
                .orElseThrow();
        assertThat(amps.answer()).isEqualTo("4.5 A");
        assertThat(amps.number()).isEqualTo(4.5);
        assertThat(amps.limits())
                .isEqualToNormalizingUnicode("pass 3.6\u00a0A to 4.8\u00a0A, watch below and to 5.3\u00a0A");
        assertThat(amps.verdict()).isEqualTo(Verdict.PASS);
        assertThat(care.task(opening.id()).state()).isEqualTo(TaskState.SIGNED);
        assertThat(care.task(opening.id()).recordId()).isEqualTo(id);
        assertThat(findings.findingsOf(unit.id())).isEmpty();
    }

    @Test
    void refusesASignWithoutTheUnpluggedTickAtItsPlace() {
        CheckLine unplugged = line(sheet(), "Unplugged");
        assertThat(sheet().checklist().lines().get(0)).isEqualTo(unplugged);
        List<Answer> answers = allPass(sheet(), ilse);

        assertThat(codesAt(unplugged, () -> sign(without(answers, unplugged), ilse)))
                .containsExactly("answer care.line.safetyFirst");
        assertThat(codesAt(unplugged, () -> sign(with(answers, Answer.of(unplugged.id(), CheckLine.NO)), ilse)))
                .containsExactly("answer care.line.safetyFirst");
        assertThat(codesAt(
                        unplugged,
                        () -> sign(with(answers, Answer.of(unplugged.id(), CheckLine.DOES_NOT_APPLY)), ilse)))
                .containsExactly("answer checklists.applies");
        assertThat(care.task(opening.id()).open()).isTrue();
    }

    @Test
    void keepsWhatWasTypedWithoutSigning() {
        CheckLine amps = line(sheet(), "Running amps");
        CheckLine shaft = line(sheet(), "Turn the shaft");
        care.saveAnswers(
                opening.id(),
                0,
                List.of(
                        Answer.of(amps.id(), "four and a bit"),
                        new Answer(shaft.id(), "Scrapes", "Free", "Grit under the plate", 3)),
                teo);

        Worksheet kept = sheet();
        assertThat(kept.task().open()).isTrue();
        assertThat(kept.task().startedAt()).isEqualTo(MORNING);
        assertThat(kept.saved().get(amps.id()).answer().answer()).isEqualTo("four and a bit");
        assertThat(kept.saved().get(shaft.id()).answer())
                .isEqualTo(new Answer(shaft.id(), "Scrapes", "Free", "Grit under the plate", 3));
        assertThat(kept.saved().get(shaft.id()).answeredByName()).isEqualTo("Teo Brandt");

        care.saveAnswers(opening.id(), 1, List.of(new Answer(amps.id(), null, null, null, null)), teo);
        assertThat(sheet().saved()).containsOnlyKeys(shaft.id());
    }

    @Test
    void refusesAnswersThatSomebodyElseChangedMeanwhile() {
        CheckLine cord = line(sheet(), "Are cord, plug");
        care.saveAnswers(opening.id(), 0, List.of(Answer.of(cord.id(), CheckLine.YES)), teo);

        assertThatThrownBy(() -> care.saveAnswers(opening.id(), 0, List.of(Answer.of(cord.id(), CheckLine.NO)), ilse))
                .isInstanceOf(Stale.class);
        assertThatThrownBy(() -> care.sign(opening.id(), SignOff.of(0, allPass(sheet(), ilse)), ilse))
                .isInstanceOf(Stale.class);
        assertThat(sheet().saved().get(cord.id()).answer().answer()).isEqualTo(CheckLine.YES);
    }

    @Test
    void refusesEveryGapAndEveryUnreadableAnswerAtItsPlace() {
        CheckLine amps = line(sheet(), "Running amps");
        CheckLine earth = line(sheet(), "Earth continuity");
        CheckLine runs = line(sheet(), "How does it run");
        List<Answer> answers = with(
                with(without(allPass(sheet(), ilse), runs), Answer.of(amps.id(), "4,6")),
                Answer.of(earth.id(), "0.3 MΩ"));

        assertThat(codesAt(amps, () -> sign(answers, ilse))).containsExactly("answer measures.comma");
        assertThat(codesAt(earth, () -> sign(answers, ilse))).containsExactly("answer checklists.otherUnit");
        assertThat(codesAt(runs, () -> sign(answers, ilse))).containsExactly("answer care.line.missing");
        assertThat(care.recordsOf(unit.id())).isEmpty();
    }

    @Test
    void makesAFindingOfAFailedCheckOnlyWithWordsAndNeverMilderThanItsCheck() {
        CheckLine shaft = line(sheet(), "Turn the shaft");
        List<Answer> answers = allPass(sheet(), ilse);

        assertThat(codesAt(shaft, () -> sign(with(answers, Answer.of(shaft.id(), "Scrapes")), ilse)))
                .containsExactly("finding care.finding.missing");
        Answer milder = Answer.of(shaft.id(), "Scrapes").found("Scrapes once each turn", 2);
        assertThat(codesAt(shaft, () -> sign(with(answers, milder), ilse)))
                .containsExactly("severity care.finding.lower");
        Answer worse = Answer.of(shaft.id(), "Scrapes").found("Scrapes once each turn", 4);
        long record = sign(with(answers, worse), ilse);

        assertThat(findings.findingsOfRecord(record)).singleElement().satisfies(finding -> {
            assertThat(finding.severity()).isEqualTo(4);
            assertThat(finding.what()).isEqualTo("Scrapes once each turn");
            assertThat(finding.checkLineId()).isEqualTo(shaft.id());
            assertThat(finding.openedByName()).isEqualTo("Ilse Marrow");
        });
    }

    @Test
    void callsADamagedCordSeverityFour() {
        CheckLine cord = line(sheet(), "Are cord, plug");
        Answer nick = new Answer(cord.id(), CheckLine.NO, null, "Nicked to the core", null);
        sign(with(allPass(sheet(), ilse), nick), ilse);

        assertThat(findings.findingsOf(unit.id())).extracting(Finding::severity).containsExactly(Finding.DANGER);
    }

    @Test
    void keepsWhatWasFoundAndJudgesByHowItWasLeft() {
        CheckLine shaft = line(sheet(), "Turn the shaft");
        CheckLine gap = line(sheet(), "Gap between");
        List<Answer> answers = with(
                with(allPass(sheet(), ilse), new Answer(shaft.id(), "Scrapes", "Free", null, null)),
                new Answer(gap.id(), "2.6 mm", "1.4 mm", null, null));

        ServiceRecord record = care.record(sign(answers, ilse));

        RecordLine turned = record.lines().get(shaft.ordinal() - 1);
        assertThat(turned.answer()).isEqualTo("Scrapes");
        assertThat(turned.asLeft()).isEqualTo("Free");
        assertThat(turned.verdict()).isEqualTo(Verdict.PASS);
        RecordLine measured = record.lines().get(gap.ordinal() - 1);
        assertThat(measured.answer()).isEqualTo("2.6 mm");
        assertThat(measured.asLeft()).isEqualTo("1.4 mm");
        assertThat(measured.number()).isEqualTo(1.4);
        assertThat(measured.verdict()).isEqualTo(Verdict.WATCH);
        assertThat(findings.findingsOf(unit.id())).isEmpty();
    }

    @Test
    void leavesElectricalLinesToACompetentPersonAndOpensTheirTest() {
        ServiceRecord record = care.record(sign(allPass(sheet(), teo), teo));

        assertThat(record.lines())
                .filteredOn(
                        line -> line.verdict() == Verdict.LEFT && line.section().startsWith("By meter"))
                .extracting(RecordLine::unit)
                .containsExactly("Ω", "MΩ");
        Task test = care.tasksOf(unit.id()).stream()
                .filter(task -> task.phase() == Phase.ELECTRICAL)
                .findFirst()
                .orElseThrow();
        assertThat(test.title()).isEqualTo("Electrical test");
        assertThat(test.why()).isEqualTo(Why.of("left", "Teo Brandt", "Opening 2026"));
        assertThat(test.opensOn()).isEqualTo("2026-03-14");

        Worksheet electrical = care.worksheet(test.id());
        Refused refused = catchThrowableOfType(
                Refused.class, () -> care.sign(test.id(), SignOff.of(0, allPass(electrical, teo)), teo));
        assertThat(refused.wrongs()).extracting(Refused.Wrong::code).contains("care.sign.needs");
        care.sign(test.id(), SignOff.of(0, allPass(electrical, ilse)), ilse);
        assertThat(care.task(test.id()).state()).isEqualTo(TaskState.SIGNED);
    }

    @Test
    void takesNoElectricalAnswerFromAnybodyElse() {
        CheckLine earth = line(sheet(), "Earth continuity");
        List<Answer> answers = with(allPass(sheet(), teo), Answer.of(earth.id(), "0.2"));

        assertThat(codesAt(earth, () -> sign(answers, teo))).containsExactly("answer care.line.notYours");
        assertThat(codesAt(earth, () -> care.saveAnswers(opening.id(), 0, answers, teo)))
                .containsExactly("answer care.line.notYours");
        assertThat(sheet().saved()).isEmpty();
    }

    @Test
    void hasWhoeverMeasuredSignForIt() {
        CheckLine earth = line(sheet(), "Earth continuity");
        care.saveAnswers(opening.id(), 0, List.of(Answer.of(earth.id(), "0.2")), ilse);

        Refused refused = catchThrowableOfType(Refused.class, () -> sign(allPass(sheet(), teo), teo));
        assertThat(refused.wrongs()).contains(Refused.Wrong.at("", "care.sign.measuredBy", "Ilse Marrow"));
        sign(allPass(sheet(), ilse), ilse);
    }

    @Test
    void signsNothingTwice() {
        int version = opening.version();
        long record = sign(allPass(sheet(), ilse), ilse);

        AlreadySigned already = catchThrowableOfType(
                AlreadySigned.class, () -> care.sign(opening.id(), SignOff.of(version, allPass(sheet(), teo)), teo));
        assertThat(already.recordId()).isEqualTo(record);
        assertThatThrownBy(() -> care.saveAnswers(opening.id(), version, List.of(), teo))
                .isInstanceOf(AlreadySigned.class);
        assertThat(care.recordsOf(unit.id())).hasSize(1);
    }

    @Test
    void signsOnceWhenTwoSignAtTheSameMoment() throws Exception {
        List<Answer> answers = allPass(sheet(), ilse);
        CyclicBarrier together = new CyclicBarrier(2);
        Callable<Object> signing = () -> {
            together.await();
            try {
                return care.sign(opening.id(), SignOff.of(0, answers), ilse);
            } catch (AlreadySigned already) {
                return already;
            }
        };
        ExecutorService two = Executors.newFixedThreadPool(2);
        try {
            List<Object> results = new ArrayList<>();
            for (Future<Object> each : two.invokeAll(List.of(signing, signing))) {
                results.add(each.get());
            }
            assertThat(results).hasAtLeastOneElementOfType(Long.class).hasAtLeastOneElementOfType(AlreadySigned.class);
        } finally {
            two.shutdownNow();
        }
        assertThat(care.recordsOf(unit.id())).hasSize(1);
    }

    @Test
    void refusesTimesThatCannotBe() {
        List<Answer> answers = allPass(sheet(), ilse);
        assertThat(codes(new SignOff(0, answers, null, MORNING.plus(Duration.ofMinutes(6)), null)))
                .containsExactly("endedAt care.time.future");
        assertThat(codes(new SignOff(0, answers, null, Instant.parse("2026-02-15T05:59:00Z"), null)))
                .containsExactly("endedAt care.time.early");
        assertThat(codes(new SignOff(0, answers, MORNING, MORNING.minusSeconds(60), null)))
                .containsExactly("startedAt care.time.order");

        // the first minute of 15 February at the yard
        long record = care.sign(
                opening.id(), new SignOff(0, answers, null, Instant.parse("2026-02-15T06:00:00Z"), "from paper"), ilse);
        assertThat(care.record(record).endedAt()).isEqualTo("2026-02-15T06:00:00Z");
        assertThat(care.record(record).note()).isEqualTo("from paper");
    }

    @Test
    void refusesToDateWorkByAClockThatWasSetBack() {
        List<Answer> answers = allPass(sheet(), ilse);
        care.saveAnswers(opening.id(), 0, answers, ilse);
        clock.set("2026-03-13T14:00:00Z");
        assertThat(codes(new SignOff(1, answers, null, null, null))).containsExactly("endedAt care.time.beforeFirst");
        clock.set("2026-03-14T14:20:00Z");
        sign(answers, ilse);

        Task electrical =
                care.tasksOf(unit.id()).stream().filter(Task::open).findFirst().orElseThrow();
        clock.set("2026-03-13T14:20:00Z");
        List<Answer> others = allPass(care.worksheet(electrical.id()), ilse);
        Refused refused = catchThrowableOfType(
                Refused.class, () -> care.sign(electrical.id(), SignOff.of(electrical.version(), others), ilse));
        assertThat(refused.wrongs())
                .contains(Refused.Wrong.at("endedAt", "care.time.beforeLast", "2026-03-13 09:20", "2026-03-14 09:20"));
        ServiceRecord record = care.recordsOf(unit.id()).get(0);
        Correction correction = new Correction(
                with(answers, Answer.of(line(sheet(), "Running amps").id(), "4.2")), "Wrong meter", null);
        assertThat(catchThrowableOfType(Refused.class, () -> care.correct(record.id(), correction, ilse))
                        .wrongs())
                .extracting(Refused.Wrong::code)
                .containsExactly("care.time.beforeLast");
        assertThat(care.recordsOf(unit.id())).hasSize(1);
    }

    private List<String> codes(SignOff signOff) {
        return catchThrowableOfType(Refused.class, () -> care.sign(opening.id(), signOff, ilse)).wrongs().stream()
                .map(wrong -> wrong.field() + " " + wrong.code())
                .toList();
    }
}
