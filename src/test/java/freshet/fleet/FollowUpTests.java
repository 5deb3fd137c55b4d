package freshet.fleet;

import static freshet.care.CareYard.LONG_AGO;
import static freshet.care.CareYard.allPass;
import static freshet.care.CareYard.with;
import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.TestClock;
import freshet.board.Board;
import freshet.care.Answer;
import freshet.care.Care;
import freshet.care.CareYard;
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
import freshet.findings.Findings;
import freshet.findings.HoldKind;
import freshet.findings.Why;
import freshet.people.Competence;
import freshet.people.Person;
import freshet.pumps.PumpKind;
import freshet.pumps.Unit;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;

/** What signed work leaves to be done, by whom, and what it does not prove. */
@FreshetTest
class FollowUpTests {

    @Autowired
    Fleet fleet;

    @Autowired
    Care care;

    @Autowired
    Findings findings;

    @Autowired
    Board board;

    @Autowired
    Checklists checklists;

    @Autowired
    CareYard yard;

    @Autowired
    TestClock clock;

    Person ilse;
    Person teo;

    @BeforeEach
    void springMorning() {
        clock.set("2026-03-14T14:00:00Z");
        ilse = yard.ilse();
        teo = yard.teo();
    }

    private Task toDo(Unit unit, Phase phase) {
        return care.tasksOf(unit.id()).stream()
                .filter(each -> each.phase() == phase && each.openOn(LocalDate.ofInstant(clock.instant(), each.zone())))
                .findFirst()
                .orElseThrow(() -> new AssertionError("nothing to do of " + phase));
    }

    private void sign(Worksheet sheet, List<Answer> answers, Person by) {
        care.sign(sheet.task().id(), SignOff.of(sheet.task().version(), answers), by);
    }

    private List<ReasonKind> reasons(Unit unit) {
        return fleet.readiness(unit.id()).reasons().stream().map(Reason::kind).toList();
    }

    @Test
    void openTheElectricalTestOfTheKind() {
        Unit unit =
                yard.unit("QM-301", PumpKind.BATTERY_BACKUP, yard.brackenfold().id(), LONG_AGO);
        Worksheet opening = care.worksheet(toDo(unit, Phase.OPENING).id());
        sign(opening, allPass(opening, teo), teo);
        Checklist left = checklists.checklist(toDo(unit, Phase.ELECTRICAL).checklistId());
        assertThat(left.code()).isEqualTo("electrical-test-battery-backup");
        assertThat(reasons(unit)).contains(ReasonKind.ELECTRICAL_NEVER);
    }

    @Test
    void takeNoFailedLineForATest() {
        Unit unit = yard.unit("BF-01");
        Worksheet opening = care.worksheet(toDo(unit, Phase.OPENING).id());
        CheckLine insulation = CareYard.line(opening, "Insulation of winding");
        sign(
                opening,
                with(
                        allPass(opening, ilse),
                        Answer.of(insulation.id(), "0.2 MΩ")
                                .found("Water in the winding", 4)
                                .with("Tester 3")),
                ilse);
        assertThat(reasons(unit)).contains(ReasonKind.ELECTRICAL_NEVER).doesNotContain(ReasonKind.ELECTRICAL);
    }

    @Test
    void takeNoLineOfAnOwnersOwnForATest() {
        Checklist closing = checklists.checklists().stream()
                .filter(each -> each.code().equals("closing-utility-submersible"))
                .findFirst()
                .orElseThrow();
        add(closing, Competence.ELECTRICAL);
        Unit unit = yard.unit("BF-02");
        clock.set("2026-10-20T14:00:00Z");
        board.plan();
        Task task = toDo(unit, Phase.CLOSING);
        Worksheet sheet = care.worksheet(task.id());
        sign(sheet, allPass(sheet, ilse), ilse);
        assertThat(reasons(unit)).contains(ReasonKind.ELECTRICAL_NEVER).doesNotContain(ReasonKind.ELECTRICAL);
    }

    @Test
    void leaveWhatNeedsAnotherCompetenceToSuchAPersonNotToAnElectrician() {
        Checklist afterRepair = checklists.checklists().stream()
                .filter(each -> each.code().equals("after-repair-utility-submersible"))
                .findFirst()
                .orElseThrow();
        add(afterRepair, Competence.GAS);
        Unit unit = yard.unit("BF-02");
        findings.hold(unit.id(), HoldKind.TAGGED_OUT, Why.typed("Smells of gas"), teo);
        Worksheet sheet = care.worksheet(toDo(unit, Phase.AFTER_REPAIR).id());
        clock.advance(Duration.ofMinutes(5));
        sign(sheet, allPass(sheet, ilse), ilse);
        assertThat(care.tasksOf(unit.id()).stream().filter(each -> each.open() && each.phase() == Phase.ELECTRICAL))
                .isEmpty();
        Task again = toDo(unit, Phase.AFTER_REPAIR);
        assertThat(findings.openHolds()).as("the gas line is still left").hasSize(1);
        Worksheet whole = care.worksheet(again.id());
        sign(whole, allPass(whole, yard.freya()), yard.freya());
        assertThat(findings.openHolds()).isEmpty();
    }

    private void add(Checklist list, Competence competence) {
        List<LineDraft> lines = new ArrayList<>(ChecklistDraft.of(list).lines());
        lines.add(new LineDraft(
                null,
                lines.get(lines.size() - 1).section(),
                "Is it as the competent person wants it?",
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
        checklists.publish(list.id(), list.number(), new ChecklistDraft(list.minutes(), "One more line", lines), ilse);
    }
}
