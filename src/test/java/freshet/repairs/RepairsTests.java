package freshet.repairs;

import static freshet.care.CareYard.allPass;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import freshet.FreshetTest;
import freshet.Pages;
import freshet.Pages.Page;
import freshet.TestClock;
import freshet.care.Care;
import freshet.care.CareYard;
import freshet.care.SignOff;
import freshet.care.Task;
import freshet.care.Worksheet;
import freshet.checklists.CheckLine;
import freshet.checklists.Checklists;
import freshet.checklists.Phase;
import freshet.findings.Cause;
import freshet.findings.FailureMode;
import freshet.findings.Finding;
import freshet.findings.FindingDraft;
import freshet.findings.Findings;
import freshet.findings.Hold;
import freshet.findings.WaiverDraft;
import freshet.fleet.Fleet;
import freshet.fleet.Reason;
import freshet.fleet.ReasonKind;
import freshet.fleet.Word;
import freshet.happenings.Happening;
import freshet.happenings.HappeningKind;
import freshet.happenings.Happenings;
import freshet.people.Competence;
import freshet.people.NotFound;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Stale;
import freshet.pumps.PumpKind;
import freshet.pumps.Unit;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;

@FreshetTest
class RepairsTests {

    private static final LocalDate TODAY = LocalDate.of(2026, 1, 25);

    @Autowired
    MockMvc mvc;

    @Autowired
    Repairs repairs;

    @Autowired
    Findings findings;

    @Autowired
    Fleet fleet;

    @Autowired
    Care care;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Happenings happenings;

    @Autowired
    Checklists checklists;

    @Autowired
    CareYard yard;

    @Autowired
    TestClock clock;

    Person ilse;
    Person teo;
    Unit unit;
    long milky;

    @BeforeEach
    void milkyOil() {
        // the yard's opening begins 15 February
        clock.set("2026-01-25T15:00:00Z");
        ilse = yard.ilse();
        teo = yard.teo();
        unit = yard.unit("BF-14");
        milky = findings.write(
                FindingDraft.about(unit.id(), 3, "Milky oil").failed(FailureMode.WATER_IN_OIL, Cause.UNKNOWN), teo);
    }

    private static Part sealKit(@Nullable LocalDate ordered, @Nullable LocalDate expected, @Nullable LocalDate came) {
        return new Part("SK-12", "Seal kit", new BigDecimal("1"), new BigDecimal("62.50"), 12, ordered, expected, came);
    }

    private static RepairPlan plan(List<Long> findingIds, Part... parts) {
        return new RepairPlan(
                findingIds,
                null,
                LocalDate.of(2026, 3, 22),
                List.of(parts),
                90,
                new BigDecimal("60"),
                new BigDecimal("4.5"),
                new BigDecimal("300"),
                null);
    }

    private static RepairDone dry() {
        return new RepairDone("Oil milky", "New seal, oil clear after an hour", null);
    }

    @Test
    void goFromTheFindingToAHeldUnitAndBackToReady() {
        Unit other = yard.unit("BF-15");
        long note = findings.write(FindingDraft.about(unit.id(), 2, "Handle loose"), teo);
        assertThat(repairs.unplanned()).extracting(Finding::id).containsExactly(milky, note);
        long id = repairs.plan(unit.id(), plan(List.of(milky, note), sealKit(null, null, null)), teo);
        assertThat(repairs.unplanned()).isEmpty();
        Repair repair = repairs.repair(id);
        assertThat(repair.state()).isEqualTo(RepairState.WAITING);
        assertThat(repair.total()).isEqualTo(new BigDecimal("157.00"));
        ToOrder order = repairs.parts().get(0);
        // 15 February less 12 days less two weeks
        assertThat(order.orderBy()).isEqualTo("2026-01-20");
        assertThat(order.late()).isTrue();

        repairs.change(id, 1, plan(List.of(milky, note), sealKit(TODAY, TODAY.plusDays(12), TODAY.plusDays(9))), teo);
        assertThat(repairs.parts()).isEmpty();
        assertThat(repairs.repair(id).state()).isEqualTo(RepairState.TO_DO);
        clock.set("2026-02-03T15:00:00Z");
        repairs.done(id, 2, dry(), ilse);
        assertThat(repairs.repair(id).state()).isEqualTo(RepairState.DONE);
        assertThat(findings.findingsOf(unit.id())).allSatisfy(each -> {
            assertThat(each.open()).isFalse();
            assertThat(each.closedHow()).isEqualTo("New seal, oil clear after an hour");
        });
        assertThat(happenings.ofUnit(unit.id())).extracting(Happening::kind).containsExactly(HappeningKind.REPAIRED);
        assertThat(open(unit)).hasSize(1);
        assertThat(fleet.readiness(unit.id()).word()).isEqualTo(Word.NOT_READY);
        clock.set("2026-02-04T15:00:00Z");
        List<Task> retests = retests(unit);
        assertThat(retests).hasSize(1);
        Worksheet sheet = care.worksheet(retests.get(0).id());
        care.sign(sheet.task().id(), SignOff.of(sheet.task().version(), allPass(sheet, ilse)), ilse);
        assertThat(open(unit)).isEmpty();
        // the opening of last year was never signed here
        assertThat(fleet.readiness(unit.id()).against())
                .extracting(Reason::kind)
                .containsExactly(ReasonKind.OPENING_LATE);
        assertThat(retests(other)).isEmpty();
    }

    private List<Hold> open(Unit of) {
        return findings.holdsOf(of.id()).stream().filter(Hold::open).toList();
    }

    private List<Task> retests(Unit of) {
        return care.tasksOf(of.id()).stream()
                .filter(task -> task.open() && task.phase() == Phase.AFTER_REPAIR)
                .toList();
    }

    @Test
    void doNotHoldAUnitForASmallDefectButCheckIt() {
        Unit small = yard.unit("BF-16");
        long handle = findings.write(FindingDraft.about(small.id(), 2, "Handle loose"), teo);
        long id = repairs.plan(small.id(), plan(List.of(handle)), teo);
        repairs.done(id, 1, dry(), teo);
        assertThat(open(small)).isEmpty();
        assertThat(retests(small)).hasSize(1);

        // a rule for repaired pumps opens it instead, and nothing a second time
        jdbc.sql("update care_rule set active = true where code = 'after-repair-utility-submersible'")
                .update();
        Unit ruled = yard.unit("BF-13");
        long seal = findings.write(FindingDraft.about(ruled.id(), 3, "Weeps"), teo);
        repairs.done(repairs.plan(ruled.id(), plan(List.of(seal)), teo), 1, dry(), teo);
        assertThat(retests(ruled)).extracting(Task::title).containsExactly("Back to service after repair");
        assertThat(open(ruled)).hasSize(1);
    }

    @Test
    void comeBackToTheListWhenGivenUpOrPutOffNoLonger() {
        long id = repairs.plan(unit.id(), plan(List.of(milky)), teo);
        assertThatThrownBy(() -> repairs.giveUp(id, 1, " ", teo)).isInstanceOf(Refused.class);
        repairs.giveUp(id, 1, "A new one is cheaper", teo);
        assertThat(repairs.unplanned()).extracting(Finding::id).containsExactly(milky);
        findings.putOff(milky, 0, new WaiverDraft("Waits for the kit", null, TODAY.plusDays(5)), ilse);
        assertThat(repairs.unplanned()).isEmpty();
        assertThat(repairs.putOff()).extracting(Finding::id).containsExactly(milky);
        clock.set("2026-01-31T15:00:00Z");
        assertThat(repairs.unplanned()).extracting(Finding::id).containsExactly(milky);
        assertThat(fleet.readiness(unit.id()).word()).isEqualTo(Word.NOT_READY);
    }

    @Test
    void refuseWhatCannotBe() {
        Unit other = yard.unit("BF-15");
        long others = findings.write(FindingDraft.about(other.id(), 2, "Handle loose"), teo);
        assertThatThrownBy(() -> repairs.plan(unit.id(), plan(List.of()), teo))
                .hasMessageContaining("findings.missing");
        assertThatThrownBy(() -> repairs.plan(unit.id(), plan(List.of(milky, others)), teo))
                .hasMessageContaining("findings.other");
        long id = repairs.plan(unit.id(), plan(List.of(milky)), teo);
        assertThatThrownBy(() -> repairs.plan(unit.id(), plan(List.of(milky)), teo))
                .hasMessageContaining("findings.taken");
        assertThatThrownBy(() -> repairs.change(id, 0, plan(List.of(milky)), teo))
                .isInstanceOf(Stale.class);
        assertThatThrownBy(() -> repairs.done(id, 0, dry(), teo)).isInstanceOf(Stale.class);
        assertThatThrownBy(() -> repairs.done(id, 1, new RepairDone(null, null, TODAY.plusDays(1)), teo))
                .hasMessageContaining("asLeft.missing")
                .hasMessageContaining("doneOn.future");
        assertThat(findings.finding(milky).open()).isTrue();
        assertThat(open(unit)).isEmpty();
        repairs.done(id, 1, dry(), teo);
        assertThatThrownBy(() -> repairs.giveUp(id, 2, "No", teo)).isInstanceOf(Stale.class);
        assertThatThrownBy(() -> repairs.plan(unit.id(), plan(List.of(milky)), teo))
                .hasMessageContaining("findings.other");
        assertThatThrownBy(() -> repairs.repair(999_999)).isInstanceOf(NotFound.class);

        long earth = checklists.checklists().stream()
                .flatMap(each -> each.lines().stream())
                .filter(line -> line.competence() == Competence.ELECTRICAL)
                .map(CheckLine::id)
                .findFirst()
                .orElseThrow();
        long noEarth = findings.write(new FindingDraft(unit.id(), null, earth, 4, "No earth"), ilse);
        long forIlse = repairs.plan(unit.id(), plan(List.of(noEarth)), teo);
        assertThatThrownBy(() -> repairs.done(forIlse, 1, dry(), teo)).hasMessageContaining("needs.ELECTRICAL");
        repairs.done(forIlse, 1, dry(), ilse);
    }

    @Test
    void takeAFindingOnceWhenTwoPlanAtOnce() throws Exception {
        Callable<Long> planning = () -> repairs.plan(unit.id(), plan(List.of(milky)), teo);
        ExecutorService two = Executors.newFixedThreadPool(2);
        int refused = 0;
        try {
            for (Future<Long> each : two.invokeAll(List.of(planning, planning))) {
                try {
                    each.get();
                } catch (ExecutionException taken) {
                    assertThat(taken.getCause()).isInstanceOf(Refused.class);
                    refused++;
                }
            }
        } finally {
            two.shutdown();
        }
        assertThat(refused).isOne();
        assertThat(repairs.openRepairs()).hasSize(1);
    }

    @Test
    void weighWithoutDeciding() {
        Unit sump =
                yard.unit("QM-07", PumpKind.SUMP_WITH_FLOAT, yard.brackenfold().id(), LocalDate.of(2015, 1, 25));
        List<Long> ids = new ArrayList<>();
        for (String day : List.of("2024-12-01", "2025-06-01", "2026-01-20")) {
            clock.set(day + "T15:00:00Z");
            ids.add(findings.write(
                    FindingDraft.about(sump.id(), 2, "Won't stop").failed(FailureMode.WONT_STOP, null), teo));
        }
        clock.set("2026-01-25T15:00:00Z");
        long id = repairs.plan(
                sump.id(),
                new RepairPlan(
                        List.of(ids.get(2)),
                        null,
                        null,
                        List.of(sealKit(null, null, null)),
                        60,
                        new BigDecimal("90"),
                        null,
                        new BigDecimal("305"),
                        null),
                teo);
        ReplaceSheet sheet = repairs.sheet(id);
        assertThat(sheet.costRatio()).isEqualTo(new BigDecimal("0.5000"));
        assertThat(sheet.costsMoreThanHalf()).as("half is not more than half").isFalse();
        assertThat(sheet.years()).isEqualTo(new BigDecimal("11.0"));
        assertThat(sheet.lifeYears()).isEqualTo(10);
        assertThat(sheet.outlived()).isTrue();
        assertThat(sheet.capacity()).isNull();
        assertThat(sheet.sameFailures()).as("within twelve months").isEqualTo(2);
        assertThat(sheet.failedSoBefore()).isTrue();
        assertThat(sheet.daysToSeason()).isEqualTo(21);
        assertThat(sheet.comesAfterOpening()).isFalse();
        assertThat(repairs.repair(id).open()).isTrue();
        long bare = repairs.plan(unit.id(), plan(List.of(milky)), teo);
        assertThat(repairs.sheet(bare).lifeFrom()).isEqualTo(ReplaceSheet.LifeFrom.UNKNOWN);
    }

    @Test
    void arePlannedSeenAndDoneOnTheirPages() {
        Pages teos = Pages.signedIn(mvc, "teo", "mud on boots");
        assertThat(teos.open("/findings/" + milky).text()).contains("Plan the repair");
        String address = "/repairs/new?finding=" + milky;
        assertThat(teos.open(address).text("h1")).isEqualTo("Plan a repair of BF-14");
        Page more = teos.submit(address, "findings", "" + milky, "more", "parts", "parts[0].description", "Seal kit");
        assertThat(more.status()).isEqualTo(200);
        assertThat(more.html().select("fieldset.sheet")).hasSize(4);

        Page refused = teos.submit(
                address,
                "findings",
                "" + milky,
                "parts[0].description",
                "Seal kit",
                "parts[0].unitPrice",
                "62.505",
                "parts[0].leadDays",
                "400",
                "parts[1].number",
                "O-9",
                "labourMinutes",
                "1.5",
                "plannedFor",
                "22.3.",
                "otherCost",
                "-1");
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.wrong("labourMinutes")).isEqualTo("Type a whole number.");
        assertThat(refused.wrong("plannedFor")).isNotEmpty();
        assertThat(refused.value("parts[0].description")).isEqualTo("Seal kit");
        Page money = teos.submit(
                address,
                "findings",
                "" + milky,
                "parts[0].description",
                "Seal kit",
                "parts[0].unitPrice",
                "62.505",
                "parts[0].leadDays",
                "400",
                "parts[1].number",
                "O-9",
                "otherCost",
                "-1");
        assertThat(money.status()).isEqualTo(422);
        assertThat(List.of(
                        money.wrong("parts[0].unitPrice"),
                        money.wrong("parts[0].leadDays"),
                        money.wrong("parts[1].description"),
                        money.wrong("otherCost")))
                .doesNotContain("");
        assertThat(teos.submit(address, "findings", "no number").wrong("findings"))
                .isEqualTo("Choose at least one finding.");

        String place = teos.submit(
                        address,
                        "findings",
                        "" + milky,
                        "parts[0].description",
                        "Seal kit",
                        "parts[0].unitPrice",
                        "62.50",
                        "parts[0].leadDays",
                        "12",
                        "labourMinutes",
                        "90",
                        "labourRate",
                        "60",
                        "priceNew",
                        "280",
                        "plannedFor",
                        "2026-03-22")
                .location();
        Page page = teos.open(place);
        assertThat(page.text())
                .contains("Waiting for parts · late", "$62.50", "$90.00", "$152.50", "It was to be ordered by 20 Jan")
                .contains("These are sums to look at. They decide nothing.", "$152.50 against $280.00: 54 %");
        assertThat(teos.open("/repairs").text()).contains("Repair " + place.substring(9) + " of BF-14");
        assertThat(teos.open("/repairs?unit=BF-99").status()).isEqualTo(200);
        assertThat(teos.open("/repairs?site=" + unit.stand().siteId() + "&unit=bf-14")
                        .text("table"))
                .contains("BF-14");
        assertThat(teos.open("/repairs/parts").text()).contains("Seal kit", "Order now.");
        assertThat(teos.open("/pumps/" + unit.id()).text()).contains("Repair " + place.substring(9) + " of BF-14");
        assertThat(teos.open(address).location()).isEqualTo(place);

        assertThat(teos.submit(place + "/plan", "version", "0", "findings", "" + milky, "what", "Seal")
                        .status())
                .isEqualTo(409);
        Page unsaid = teos.submit(place + "/done", "version", "1", "asFound", "Milky");
        assertThat(unsaid.status()).isEqualTo(422);
        assertThat(unsaid.wrong("asLeft")).isEqualTo("Say how it was left.");
        assertThat(unsaid.html().getElementById("asFound").text()).isEqualTo("Milky");
        assertThat(teos.open(place + "/done").text()).contains("stays tagged out until that check is passed");
        assertThat(teos.submit(place + "/done", "version", "1", "asLeft", "Dry").location())
                .isEqualTo("/pumps/" + unit.id());
        assertThat(teos.submit(place + "/give-up", "version", "1", "why", "Late")
                        .status())
                .isEqualTo(409);
        assertThat(teos.open("/pumps/" + unit.id()).text())
                .contains("Tagged out since", "repaired (" + place.substring(9) + ")", "$152.50");
        assertThat(teos.open("/repairs/999999").status()).isEqualTo(404);
        assertThat(teos.open("/repairs/new?finding=999999").status()).isEqualTo(404);
    }
}
