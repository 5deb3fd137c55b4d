package freshet.offline;

import static freshet.care.CareYard.allPass;
import static freshet.care.CareYard.with;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import freshet.FreshetTest;
import freshet.Pages;
import freshet.Pages.Page;
import freshet.TestClock;
import freshet.care.Answer;
import freshet.care.Care;
import freshet.care.CareYard;
import freshet.care.Correction;
import freshet.care.ServiceRecord;
import freshet.care.SignOff;
import freshet.care.Task;
import freshet.care.Worksheet;
import freshet.checklists.AnswerKind;
import freshet.checklists.CheckLine;
import freshet.checklists.Checklist;
import freshet.checklists.ChecklistDraft;
import freshet.checklists.Checklists;
import freshet.checklists.LineDraft;
import freshet.checklists.Phase;
import freshet.offline.Delivered.Outcome;
import freshet.people.Competence;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.pumps.Unit;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

/** What is for others to answer, and what nobody skips, by every way in: page, door, correction, delivery from a phone. */
@FreshetTest
class OthersTests {

    private static final Instant MORNING = Instant.parse("2026-03-14T14:00:00Z");
    private static final String FOR_OTHERS = "Is it as the competent person wants it?";

    @Autowired
    MockMvc mvc;

    @Autowired
    Care care;

    @Autowired
    Offline offline;

    @Autowired
    Checklists checklists;

    @Autowired
    CareYard yard;

    @Autowired
    TestClock clock;

    Person teo;
    Person freya;
    Unit unit;
    Task opening;
    Pages teos;

    @BeforeEach
    void springMorning() {
        clock.set(MORNING);
        teo = yard.teo();
        freya = yard.freya();
        unit = yard.unit("BF-04");
        opening = care.tasksOf(unit.id()).stream()
                .filter(task -> task.phase() == Phase.OPENING)
                .findFirst()
                .orElseThrow();
        teos = Pages.signedIn(mvc, "teo", "mud on boots");
    }

    private Worksheet sheet() {
        return care.worksheet(opening.id());
    }

    /** One more line at the end of the opening, for persons of this competence. */
    private CheckLine lineFor(Competence competence) {
        Checklist list = checklists.checklist(opening.checklistId());
        List<LineDraft> lines = new ArrayList<>(ChecklistDraft.of(list).lines());
        lines.add(new LineDraft(
                null,
                lines.get(lines.size() - 1).section(),
                FOR_OTHERS,
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
                competence,
                "common practice, no source"));
        checklists.publish(list.id(), list.number(), new ChecklistDraft(35, "One more", lines), freya);
        return CareYard.line(sheet(), FOR_OTHERS);
    }

    private List<String> refusals(CheckLine line, ThrowingCallable refused) {
        Refused refusal = catchThrowableOfType(Refused.class, refused);
        assertThat(refusal).as("refused").isNotNull();
        return refusal.wrongs().stream()
                .filter(wrong -> wrong.field().equals(field(line)))
                .map(Refused.Wrong::code)
                .toList();
    }

    private static String field(CheckLine line) {
        return "line[c" + line.id() + "].answer";
    }

    private Delivered deliver(List<Answer> answers) {
        Map<String, String> fields = new HashMap<>();
        fields.put("version", String.valueOf(sheet().task().version()));
        fields.put("checklist", String.valueOf(sheet().checklist().versionId()));
        answers.forEach(answer -> fields.put("line[c" + answer.lineId() + "].answer", String.valueOf(answer.answer())));
        Instant done = MORNING.plus(Duration.ofMinutes(20));
        clock.set(MORNING.plus(Duration.ofHours(1)));
        return offline.deliver(
                new Entry(
                        UUID.randomUUID(),
                        1,
                        teo.id(),
                        Entry.Kind.TASK,
                        opening.id(),
                        "Opening 2026, BF-04",
                        done,
                        MORNING,
                        0,
                        new Entry.Known(null, null),
                        fields),
                teo);
    }

    @ParameterizedTest
    @EnumSource(Competence.class)
    void isNamedToWhomItIsForAndRefusedFromAnybodyElseOnEveryWayIn(Competence competence) {
        CheckLine line = lineFor(competence);
        Page page = teos.open("/tasks/" + opening.id());
        assertThat(page.html().select("[name='" + field(line) + "']")).isEmpty();
        assertThat(page.html().getElementById(field(line)).text())
                .contains("Teo Brandt is not recorded as one", "Freya Osterby");
        List<Answer> forged = with(allPass(sheet(), teo), Answer.of(line.id(), CheckLine.YES));

        assertThat(teos.submit("/tasks/" + opening.id(), "press", "sign", "version", "0", field(line), "YES")
                        .wrong(field(line)))
                .contains("Only a person recorded as competent");
        assertThat(refusals(line, () -> care.sign(opening.id(), SignOff.of(0, forged), teo)))
                .containsExactly("care.line.notYours");
        assertThat(refusals(line, () -> care.saveAnswers(opening.id(), 0, forged, teo)))
                .containsExactly("care.line.notYours");
        Delivered delivered = deliver(forged);
        assertThat(delivered.outcome()).isEqualTo(Outcome.REFUSED);
        assertThat(delivered.wrongs()).extracting(wrong -> wrong.code()).contains("care.line.notYours");
        assertThat(care.recordsOf(unit.id())).isEmpty();

        long signed = care.sign(opening.id(), SignOff.of(0, allPass(sheet(), teo)), teo);
        String correct = "/records/" + signed + "/correct";
        assertThat(teos.open(correct).html().select("[name='" + field(line) + "']"))
                .isEmpty();
        assertThat(teos.submit(correct, field(line), "YES", "why", "I looked").wrong(field(line)))
                .contains("Only a person recorded as competent");
        assertThat(refusals(line, () -> care.correct(signed, new Correction(forged, "I looked", null), teo)))
                .containsExactly("care.line.notYours");
        assertThat(care.recordsOf(unit.id())).hasSize(1);
    }

    @ParameterizedTest
    @EnumSource(Competence.class)
    void comesIntoARecordByNoSettlingOfWhoeverIsNotCompetent(Competence competence) {
        CheckLine line = lineFor(competence);
        CheckLine amps = CareYard.line(sheet(), "Running amps");
        List<Answer> forged =
                with(with(allPass(sheet(), teo), Answer.of(amps.id(), "4.1 A")), Answer.of(line.id(), CheckLine.YES));
        List<Answer> left = allPass(sheet(), teo);
        Person jonah = yard.jonah();
        care.sign(opening.id(), SignOff.of(0, left), jonah);
        String link = String.valueOf(deliver(forged).link());
        Person dana = yard.ownerOfNone();
        offline.settle(
                Long.parseLong(link.substring(link.lastIndexOf('/') + 1)), Conflict.How.ADD, "Both looked", dana);
        List<ServiceRecord> records = care.recordsOf(unit.id());
        assertThat(records).hasSize(2);
        assertThat(records.get(1).lines().get(amps.ordinal() - 1).answer()).isEqualTo("4.1 A");
        assertThat(records.get(1).lines().get(line.ordinal() - 1).answer()).isNull();
    }

    @Test
    void ticksForSafetyAreAskedForOnEveryWayIn() {
        CheckLine safety = sheet().checklist().lines().get(0);
        assertThat(safety.safety()).isTrue();
        for (String tick : new String[] {null, "", CheckLine.NO, CheckLine.DOES_NOT_APPLY}) {
            List<Answer> skipped = with(allPass(sheet(), teo), new Answer(safety.id(), tick, null, null, null));
            assertThat(refusals(safety, () -> care.sign(opening.id(), SignOff.of(0, skipped), teo)))
                    .as("door, %s", tick)
                    .isNotEmpty();
        }
        assertThat(teos.submit("/tasks/" + opening.id(), "press", "sign", "version", "0")
                        .wrong(field(safety)))
                .contains("Nothing can be signed without it");
        Delivered delivered = deliver(CareYard.without(allPass(sheet(), teo), safety));
        assertThat(delivered.outcome()).isEqualTo(Outcome.REFUSED);
        assertThat(delivered.wrongs()).extracting(wrong -> wrong.code()).contains("care.line.safetyFirst");
        assertThat(care.recordsOf(unit.id())).isEmpty();

        long record = care.sign(opening.id(), SignOff.of(0, allPass(sheet(), teo)), teo);
        List<Answer> untick = CareYard.without(allPass(sheet(), teo), safety);
        assertThat(refusals(safety, () -> care.correct(record, new Correction(untick, "Forgot", null), teo)))
                .containsExactly("care.line.safetyFirst");
        assertThat(teos.submit("/records/" + record + "/correct", "why", "Forgot")
                        .wrong(field(safety)))
                .contains("Nothing can be signed without it");
        assertThat(care.recordsOf(unit.id())).hasSize(1);
    }
}
