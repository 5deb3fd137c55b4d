package freshet.fleet;

import static freshet.care.CareYard.LONG_AGO;
import static freshet.care.CareYard.allPass;
import static freshet.care.CareYard.line;
import static freshet.care.CareYard.with;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import freshet.FreshetTest;
import freshet.Pages;
import freshet.Pages.Page;
import freshet.TestClock;
import freshet.care.Answer;
import freshet.care.Care;
import freshet.care.CareYard;
import freshet.care.SignOff;
import freshet.care.Task;
import freshet.care.Worksheet;
import freshet.checklists.CheckLine;
import freshet.checklists.Phase;
import freshet.findings.Finding;
import freshet.findings.FindingDraft;
import freshet.findings.Findings;
import freshet.findings.Hold;
import freshet.findings.HoldKind;
import freshet.findings.Why;
import freshet.measures.Show;
import freshet.measures.UnitSystem;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Stale;
import freshet.pumps.PumpKind;
import freshet.pumps.Unit;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.MessageSource;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;

/** Units that are held, and the only way back: a re-test that passes. */
@FreshetTest
class HoldTests {

    @Autowired
    MockMvc mvc;

    @Autowired
    Fleet fleet;

    @Autowired
    Care care;

    @Autowired
    Findings findings;

    @Autowired
    CareYard yard;

    @Autowired
    TestClock clock;

    @Autowired
    MessageSource messages;

    @Autowired
    JdbcClient database;

    Person ilse;
    Person teo;
    Unit unit;

    @BeforeEach
    void oneReadyUnit() {
        clock.set("2026-03-14T14:00:00Z");
        ilse = yard.ilse();
        teo = yard.teo();
        unit = yard.unit("BF-03");
        sign(Phase.OPENING, ilse);
        clock.advance(Duration.ofHours(1));
        assertThat(word()).isEqualTo(Word.READY);
    }

    private Word word() {
        return fleet.readiness(unit.id()).word();
    }

    private Task toDo(Phase phase) {
        return care.tasksOf(unit.id()).stream()
                .filter(each -> each.phase() == phase && each.openOn(LocalDate.ofInstant(clock.instant(), each.zone())))
                .findFirst()
                .orElseThrow(() -> new AssertionError("nothing to do of " + phase));
    }

    private long sign(Phase phase, Person by) {
        Worksheet sheet = care.worksheet(toDo(phase).id());
        return sign(sheet, allPass(sheet, by), by);
    }

    private long sign(Worksheet sheet, List<Answer> answers, Person by) {
        return care.sign(sheet.task().id(), SignOff.of(sheet.task().version(), answers), by);
    }

    private List<Hold> open() {
        return findings.holdsOf(unit.id()).stream().filter(Hold::open).toList();
    }

    private Word listed() {
        return fleet.find(FleetQuery.all()).rows().stream()
                .filter(row -> row.unitId() == unit.id())
                .findFirst()
                .orElseThrow()
                .readiness()
                .word();
    }

    @Test
    void keepATaggedOutUnitNotReadyUntilItsRetestPasses() {
        long id = findings.hold(unit.id(), HoldKind.TAGGED_OUT, Why.typed("Cord cut"), teo);
        Reason why = fleet.readiness(unit.id()).reasons().get(0);
        assertThat(why.kind()).isEqualTo(ReasonKind.HELD);
        assertThat(messages.getMessage(
                        why.code(),
                        why.arguments(new Show(UnitSystem.US, Locale.US, LocalDate.of(2026, 3, 14))),
                        Locale.US))
                .isEqualTo("Tagged out since 14 Mar by Teo Brandt: Cord cut");
        assertThat(List.of(word(), listed())).containsOnly(Word.NOT_READY);

        clock.advance(Duration.ofHours(1));
        long record = sign(Phase.AFTER_REPAIR, ilse);
        Hold hold = findings.holdsOf(unit.id()).get(0);
        assertThat(hold.id()).isEqualTo(id);
        assertThat(hold.releasedRecordId()).isEqualTo(record);
        assertThat(hold.releasedByName()).isEqualTo("Ilse Marrow");
        assertThat(List.of(word(), listed())).containsOnly(Word.READY);
    }

    @Test
    void wantAnotherRetestWhenOneFailed() {
        findings.hold(unit.id(), HoldKind.TAGGED_OUT, Why.typed("Hums"), teo);
        Worksheet sheet = care.worksheet(toDo(Phase.AFTER_REPAIR).id());
        CheckLine required = sheet.checklist().lines().stream()
                .filter(line -> line.required() && !line.safety() && line.failSeverity() != null)
                .filter(line -> line.failSeverity() < Finding.STOPS_USE
                        && line.kind().name().equals("YES_NO"))
                .findFirst()
                .orElseThrow();
        sign(
                sheet,
                with(
                        allPass(sheet, ilse),
                        Answer.of(required.id(), CheckLine.NO).found("Not so good", required.failSeverity())),
                ilse);
        assertThat(open()).hasSize(1);
        assertThat(toDo(Phase.AFTER_REPAIR).id()).isNotEqualTo(sheet.task().id());
        sign(Phase.AFTER_REPAIR, ilse);
        assertThat(open()).isEmpty();
    }

    @Test
    void stayWhileAFindingIsOpenThatStopsUse() {
        long finding = findings.write(FindingDraft.about(unit.id(), 4, "Cord cut"), ilse);
        findings.hold(unit.id(), HoldKind.TAGGED_OUT, Why.typed("Cord cut"), teo);
        sign(Phase.AFTER_REPAIR, ilse);
        assertThat(open()).hasSize(1);
        findings.close(finding, 0, "New cord", ilse);
        assertThat(open()).hasSize(1);
        sign(Phase.AFTER_REPAIR, ilse);
        assertThat(open()).isEmpty();
    }

    @Test
    void waitForTheElectricalTestThatWasLeft() {
        findings.hold(unit.id(), HoldKind.TAGGED_OUT, Why.typed("Wet plug"), teo);
        sign(Phase.AFTER_REPAIR, teo);
        assertThat(open()).hasSize(1);
        long test = sign(Phase.ELECTRICAL, ilse);
        assertThat(findings.holdsOf(unit.id()).get(0).releasedRecordId()).isEqualTo(test);
    }

    @Test
    void tellAQuarantineFromATagOut() {
        findings.hold(unit.id(), HoldKind.QUARANTINE, Why.of("findings.hold.QUARANTINE"), teo);
        findings.hold(unit.id(), HoldKind.TAGGED_OUT, Why.typed("Cord cut"), teo);
        sign(Phase.AFTER_HIRE, ilse);
        assertThat(open()).extracting(Hold::kind).containsExactly(HoldKind.TAGGED_OUT);
        sign(Phase.AFTER_REPAIR, ilse);
        assertThat(word()).isEqualTo(Word.READY);
    }

    @Test
    void areNotReleasedByWorkFromBeforeNorOnAnotherUnitNorByHand() {
        Unit other = yard.unit(
                "BF-04", PumpKind.UTILITY_SUBMERSIBLE, yard.brackenfold().id(), LONG_AGO);
        long before = care.recordsOf(unit.id()).get(0).id();
        findings.hold(unit.id(), HoldKind.TAGGED_OUT, Why.typed("Cord cut"), teo);
        Hold hold = open().get(0);
        assertThatThrownBy(() -> findings.release(hold, before, ilse)).isInstanceOf(Stale.class);
        findings.hold(other.id(), HoldKind.TAGGED_OUT, Why.typed("Also"), teo);
        Task task = care.tasksOf(other.id()).stream()
                .filter(each -> each.phase() == Phase.AFTER_REPAIR)
                .findFirst()
                .orElseThrow();
        Worksheet sheet = care.worksheet(task.id());
        long others = sign(sheet, allPass(sheet, ilse), ilse);
        assertThatThrownBy(() -> findings.release(hold, others, ilse)).isInstanceOf(Stale.class);
        assertThatThrownBy(() ->
                        database.sql("update hold set released_at = now()").update())
                .isInstanceOf(DataAccessException.class);

        Pages teos = Pages.signedIn(mvc, "teo", "mud on boots");
        String address = "/pumps/" + unit.id() + "/tag-out";
        assertThat(teos.open(address).html().select("main form")).isEmpty();
        assertThat(teos.submit("/pumps/" + unit.id() + "/release").status()).isEqualTo(404);
        assertThat(teos.submit("/holds/" + hold.id() + "/release", "record", String.valueOf(before))
                        .status())
                .isEqualTo(404);
        assertThat(open()).hasSize(1);
    }

    @Test
    void areOneOfAKindWhenTwoTagOutAtOnce() throws Exception {
        Callable<Long> tag = () -> findings.hold(unit.id(), HoldKind.TAGGED_OUT, Why.typed("Cord cut"), teo);
        ExecutorService two = Executors.newFixedThreadPool(2);
        try {
            List<Future<Long>> ids = two.invokeAll(List.of(tag, tag));
            assertThat(ids.get(0).get()).isEqualTo(ids.get(1).get());
        } finally {
            two.shutdown();
        }
        assertThat(open()).hasSize(1);
    }

    @Test
    void tagAUnitOutWithAReasonAndTheCautionBeforeIt() {
        Pages teos = Pages.signedIn(mvc, "teo", "mud on boots");
        String address = "/pumps/" + unit.id() + "/tag-out";
        assertThat(teos.open("/pumps/" + unit.id()).text()).contains("Tag it out");
        assertThat(teos.open(address).text("main"))
                .containsSubsequence("Lock out and tag at the source first", "Why must nobody use it?");
        Page refused = teos.submit(address, "why", " ");
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.wrong("why")).isEqualTo("Say why.");
        assertThat(teos.submit(address, "why", "Cord cut").location()).isEqualTo("/pumps/" + unit.id());

        Page page = teos.open("/pumps/" + unit.id());
        assertThat(page.text(".reasons")).contains("Tagged out since", "by Teo Brandt: Cord cut");
        assertThat(page.text(".due")).contains("Back to service after repair");
        Page second = teos.submit(address, "why", "I say so too");
        assertThat(second.status()).isEqualTo(422);
        assertThat(second.text()).contains("It is tagged out already", "I say so too");
        assertThatThrownBy(() -> findings.hold(unit.id(), HoldKind.TAGGED_OUT, Why.typed(""), teo))
                .isInstanceOf(Refused.class);
        assertThat(teos.open("/pumps/999999/tag-out").status()).isEqualTo(404);
    }
}
