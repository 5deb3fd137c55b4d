package freshet.fleet;

import static freshet.care.CareYard.CHICAGO;
import static freshet.care.CareYard.LONG_AGO;
import static freshet.care.CareYard.allPass;
import static freshet.care.CareYard.flowTest;
import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.TestClock;
import freshet.board.Board;
import freshet.board.Why;
import freshet.care.Care;
import freshet.care.CareYard;
import freshet.care.SignOff;
import freshet.care.Task;
import freshet.checklists.Phase;
import freshet.findings.FindingDraft;
import freshet.findings.Findings;
import freshet.happenings.HappeningDraft;
import freshet.happenings.HappeningKind;
import freshet.happenings.Happenings;
import freshet.measures.Show;
import freshet.measures.UnitSystem;
import freshet.people.Person;
import freshet.places.CustomerDraft;
import freshet.places.Places;
import freshet.places.Site;
import freshet.pumps.PumpKind;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import freshet.pumps.UnitDraft;
import freshet.pumps.Whereabouts;
import freshet.readings.Readings;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.MessageSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionOperations;

@FreshetTest
class FleetTests {

    @Autowired
    Fleet fleet;

    @Autowired
    Board board;

    @Autowired
    Care care;

    @Autowired
    Findings findings;

    @Autowired
    Happenings happenings;

    @Autowired
    Readings readings;

    @Autowired
    Places places;

    @Autowired
    Pumps pumps;

    @Autowired
    CareYard yard;

    @Autowired
    TestClock clock;

    @Autowired
    MessageSource messages;

    @Autowired
    TransactionOperations transactions;

    @Autowired
    JdbcClient database;

    Person ilse;

    @BeforeEach
    void springMorning() {
        clock.set("2026-03-14T14:00:00Z");
        ilse = yard.ilse();
    }

    private Readiness readiness(Unit unit) {
        return fleet.readiness(unit.id());
    }

    private void sign(Unit unit, Phase phase, Person by) {
        Task task = care.tasksOf(unit.id()).stream()
                .filter(each -> each.phase() == phase && each.openOn(LocalDate.ofInstant(clock.instant(), each.zone())))
                .findFirst()
                .orElseThrow();
        care.sign(task.id(), SignOff.of(task.version(), allPass(care.worksheet(task.id()), by)), by);
    }

    private static List<ReasonKind> kinds(Readiness readiness) {
        return readiness.against().stream().map(Reason::kind).toList();
    }

    @Test
    void goesFromUnknownToReadyBySigningAndToNotReadyByAFinding() {
        Unit unit = yard.unit("BF-01");
        assertThat(readiness(unit).word()).isEqualTo(Word.UNKNOWN);
        assertThat(kinds(readiness(unit)))
                .containsExactly(ReasonKind.NEVER_PROVED, ReasonKind.OPENING_DUE, ReasonKind.ELECTRICAL_NEVER);

        sign(unit, Phase.OPENING, ilse);
        assertThat(readiness(unit).word()).isEqualTo(Word.READY);
        assertThat(readiness(unit).readyUntil()).isEqualTo("2027-02-14");

        long cord = findings.write(FindingDraft.about(unit.id(), 4, "Cord nicked to the core"), ilse);
        assertThat(readiness(unit).word()).isEqualTo(Word.NOT_READY);
        assertThat(readiness(unit).reasons().get(0).words()).isEqualTo("Cord nicked to the core");

        clock.advance(Duration.ofHours(1));
        findings.close(cord, 0, "New cord", ilse);
        assertThat(kinds(readiness(unit))).containsExactly(ReasonKind.MENDED_NOT_PROVED, ReasonKind.OPENING_DUE);
        Task again = care.tasksOf(unit.id()).stream()
                .filter(task -> task.phase() == Phase.AFTER_REPAIR)
                .findFirst()
                .orElseThrow();
        assertThat(again.why()).isEqualTo(Why.of("mended", "Cord nicked to the core"));
        clock.advance(Duration.ofHours(1));
        sign(unit, Phase.AFTER_REPAIR, ilse);
        assertThat(readiness(unit).word()).isEqualTo(Word.READY);
    }

    @Test
    void isNotReadyUntilACompetentPersonSignedWhatTheTechnicianLeft() {
        Unit unit = yard.unit("BF-01");
        sign(unit, Phase.OPENING, yard.teo());
        assertThat(readiness(unit).word()).isEqualTo(Word.UNKNOWN);
        assertThat(kinds(readiness(unit))).containsExactly(ReasonKind.ELECTRICAL_LEFT, ReasonKind.ELECTRICAL_NEVER);

        sign(unit, Phase.ELECTRICAL, ilse);
        assertThat(readiness(unit).word()).isEqualTo(Word.READY);
    }

    @Test
    void isUnknownFromLayingUpAndFromTheFirstDayOfTheNextOpening() {
        Unit unit = yard.unit("BF-01");
        Unit sump =
                yard.unit("QM-01", PumpKind.SUMP_WITH_FLOAT, yard.brackenfold().id(), LONG_AGO);
        sign(unit, Phase.OPENING, ilse);
        sign(sump, Phase.OPENING, ilse);
        clock.set("2026-10-20T14:00:00Z");
        board.plan();
        assertThat(readiness(unit).word()).isEqualTo(Word.READY);
        sign(unit, Phase.CLOSING, ilse);
        sign(sump, Phase.CLOSING, ilse);
        assertThat(kinds(readiness(unit))).containsExactly(ReasonKind.LAID_UP);
        // a sump that stays live was checked, not laid up
        assertThat(readiness(sump).word()).isEqualTo(Word.READY);

        clock.set("2027-02-15T05:59:00Z");
        board.plan();
        assertThat(readiness(sump).word()).isEqualTo(Word.READY);
        clock.set("2027-02-15T06:00:00Z");
        board.plan();
        assertThat(kinds(readiness(sump))).containsExactly(ReasonKind.OPENING_DUE);
    }

    private Word listed(Unit unit) {
        return fleet.find(FleetQuery.all()).rows().stream()
                .filter(row -> row.unitId() == unit.id())
                .findFirst()
                .orElseThrow()
                .readiness()
                .word();
    }

    @Test
    void turnsTheDayWhereItIsThat() {
        Site south = yard.site("South", ZoneId.of("Pacific/Auckland"));
        Unit here = yard.unit("BF-01");
        Unit there = yard.unit("S-01", PumpKind.UTILITY_SUBMERSIBLE, south.id(), LONG_AGO);
        for (Unit unit : List.of(here, there)) {
            readings.recordFlowTest(flowTest(unit.id(), clock.instant(), 21.8), ilse);
            findings.write(FindingDraft.about(unit.id(), 0, "Seen"), ilse);
        }
        sign(here, Phase.OPENING, ilse);
        assertThat(listed(here)).isEqualTo(Word.READY);
        assertThat(fleet.readiness(here.id()).readyUntil()).isEqualTo("2027-02-14");

        clock.set("2027-02-15T06:01:00Z");
        fleet.turnDay(ZoneId.of("Pacific/Auckland"));
        assertThat(listed(here)).as("nobody looked yet").isEqualTo(Word.READY);
        fleet.turnDay(CHICAGO);
        assertThat(listed(here)).isEqualTo(Word.UNKNOWN);
        fleet.turnDay(CHICAGO);
        assertThat(listed(here)).isEqualTo(Word.UNKNOWN);
    }

    /** The turn of the day waits for whoever is writing about a unit, and then judges by what was written. */
    @Test
    void losesNoFindingThatIsWrittenWhileTheDayTurns() throws Exception {
        Unit unit = yard.unit("BF-01");
        sign(unit, Phase.OPENING, ilse);
        clock.set("2027-02-15T06:01:00Z");
        ExecutorService other = Executors.newSingleThreadExecutor();
        try {
            Future<?> turning = transactions.execute(writing -> {
                findings.write(FindingDraft.about(unit.id(), 4, "Cord nicked"), ilse);
                Future<?> started = other.submit(() -> fleet.turnDay(CHICAGO));
                untilSomebodyWaits();
                return started;
            });
            Objects.requireNonNull(turning).get();
        } finally {
            other.shutdownNow();
        }
        assertThat(listed(unit)).isEqualTo(Word.NOT_READY);
        assertThat(readiness(unit).word()).isEqualTo(Word.NOT_READY);
    }

    private void untilSomebodyWaits() {
        for (long end = System.nanoTime() + Duration.ofSeconds(20).toNanos(); System.nanoTime() < end; ) {
            if (database.sql("select exists (select 1 from pg_stat_activity where datname = current_database() and"
                            + " wait_event_type = 'Lock')")
                    .query(Boolean.class)
                    .single()) {
                return;
            }
            Thread.onSpinWait();
        }
        throw new AssertionError("nobody waits");
    }

    @Test
    void carriesTheCapacityOfTheLastFlowTest() {
        Unit unit = yard.unit("BF-07");
        sign(unit, Phase.OPENING, ilse);
        readings.recordFlowTest(flowTest(unit.id(), clock.instant(), 21.8), ilse);
        clock.advance(Duration.ofHours(1));
        long low = readings.recordFlowTest(flowTest(unit.id(), clock.instant(), 25.5), ilse);

        assertThat(readiness(unit).word()).isEqualTo(Word.LIMITS);
        FleetRow row = fleet.find(FleetQuery.all()).rows().get(0);
        assertThat(row.readiness()).isEqualTo(readiness(unit));
        assertThat(row.remainingFraction())
                .isEqualTo(readings.capacity(unit.id()).orElseThrow().fraction())
                .isBetween(0.8, 0.9);
        assertThat(row.nextDueOn()).isEqualTo("2025-11-15");
        readings.withdrawFlowTest(low, "Wrong drum", ilse);
        assertThat(readiness(unit).word()).isEqualTo(Word.READY);
    }

    @Test
    void findsByWordsKindOwnerPlaceAndReadiness() {
        Site cellar = yard.site("Dyer Court", CHICAGO);
        long customer = places.addCustomer(new CustomerDraft("Quillmere Lettings", null, null), ilse)
                .id();
        Unit first = yard.unit("BF-10");
        Unit second = yard.unit("BF-9");
        pumps.register(
                new UnitDraft("QM-1", "X_5", yard.model(PumpKind.SUMP_WITH_FLOAT), customer, LONG_AGO, null),
                Whereabouts.at(cellar.id()),
                ilse);
        sign(first, Phase.OPENING, ilse);
        findings.write(FindingDraft.about(second.id(), 3, "Shaft stuck"), ilse);

        FleetQuery all = FleetQuery.all();
        assertThat(tags(all)).containsExactly("BF-9", "BF-10", "QM-1");
        assertThat(tags(all.sorted(FleetQuery.Sort.WORST))).containsExactly("BF-9", "QM-1", "BF-10");
        assertThat(tags(all.only(Word.NOT_READY))).containsExactly("BF-9");
        assertThat(tags(all.at(cellar.id()))).containsExactly("QM-1");
        assertThat(tags(text("quillmere"))).containsExactly("QM-1");
        assertThat(tags(text("dyer"))).containsExactly("QM-1");
        assertThat(tags(text("x_5"))).containsExactly("QM-1");
        assertThat(tags(text("%"))).isEmpty();
        assertThat(tags(new FleetQuery(
                        null, PumpKind.SUMP_WITH_FLOAT, null, null, false, null, false, FleetQuery.Sort.TAG, 0, 9)))
                .containsExactly("QM-1");
        assertThat(tags(new FleetQuery(null, null, null, customer, false, null, false, FleetQuery.Sort.TAG, 0, 9)))
                .containsExactly("QM-1");
        assertThat(tags(new FleetQuery(null, null, null, null, true, null, false, FleetQuery.Sort.TAG, 0, 9)))
                .containsExactly("BF-9", "BF-10");
        FleetPage page = fleet.find(all.page(1, 2));
        assertThat(page.total()).isEqualTo(3);
        assertThat(page.pages()).isEqualTo(2);
        assertThat(page.rows()).extracting(FleetRow::tag).containsExactly("QM-1");
        assertThat(fleet.tally()).isEqualTo(Map.of(Word.READY, 1, Word.NOT_READY, 1, Word.UNKNOWN, 1, Word.LIMITS, 0));
        assertThat(fleet.tallyAt(cellar.id())).containsEntry(Word.UNKNOWN, 1).containsEntry(Word.READY, 0);
    }

    @Test
    void keepsRetiredUnitsApart() {
        Unit unit = yard.unit("BF-01");
        yard.unit("BF-02");
        pumps.retire(unit.id(), unit.version(), LocalDate.of(2026, 3, 14), "Scrapped", ilse);

        assertThat(tags(FleetQuery.all())).containsExactly("BF-02");
        FleetQuery retired = new FleetQuery(null, null, null, null, false, null, true, FleetQuery.Sort.TAG, 0, 9);
        assertThat(tags(retired)).containsExactly("BF-01");
        assertThat(fleet.tally().values().stream().mapToInt(n -> n).sum()).isOne();
        assertThat(readiness(unit)).isEqualTo(new Readiness(Word.UNKNOWN, List.of(), null));
    }

    /** What the trade asks: performance proved since the last repair, sewage, dry run or storage. */
    @Test
    void isUnknownAfterHardUseUntilItIsProvedAgain() {
        Unit unit = yard.unit("BF-01");
        Unit foul = yard.unit("BF-02", PumpKind.SEWAGE, unit.stand().siteId(), LONG_AGO);
        sign(unit, Phase.OPENING, ilse);
        readings.recordFlowTest(flowTest(foul.id(), clock.instant(), 21.8), ilse);
        clock.advance(Duration.ofHours(1));
        long wrong = happenings.report(
                HappeningDraft.toUnit(HappeningKind.FOUL_USE, clock.instant(), unit.id(), null), ilse);
        assertThat(readiness(unit).word()).isEqualTo(Word.UNKNOWN);
        assertThat(kinds(readiness(unit))).containsExactly(ReasonKind.FOUL_USE);
        happenings.withdraw(wrong, "It was the other one", ilse);
        assertThat(readiness(unit).word()).isEqualTo(Word.READY);

        happenings.report(
                HappeningDraft.atSite(
                        HappeningKind.DRY_RUN, clock.instant(), unit.stand().siteId(), null),
                ilse);
        assertThat(kinds(readiness(unit))).contains(ReasonKind.DRY_RUN);
        happenings.report(HappeningDraft.toUnit(HappeningKind.FOUL_USE, clock.instant(), foul.id(), null), ilse);
        assertThat(kinds(readiness(foul))).contains(ReasonKind.DRY_RUN).doesNotContain(ReasonKind.FOUL_USE);

        clock.advance(Duration.ofHours(1));
        readings.recordFlowTest(flowTest(unit.id(), clock.instant(), 21.8), ilse);
        assertThat(kinds(readiness(unit))).doesNotContain(ReasonKind.DRY_RUN);
    }

    @Test
    void hasLimitsOnceTheTestOfTheMonthIsLateAndFromAStormToItsCheck() {
        Unit sump =
                yard.unit("QM-01", PumpKind.SUMP_WITH_FLOAT, yard.brackenfold().id(), LONG_AGO);
        database.sql("""
                        update care_rule set active = true
                        where code in ('monthly-sump-with-float', 'after-storm-sump-with-float')""").update();
        board.plan();
        sign(sump, Phase.OPENING, ilse);
        assertThat(readiness(sump).word()).isEqualTo(Word.READY);
        // each month, with 7 days of grace
        assertThat(readiness(sump).readyUntil()).isEqualTo("2026-04-21");
        clock.set("2026-04-21T14:00:00Z");
        fleet.turnDay(CHICAGO);
        assertThat(readiness(sump).word()).isEqualTo(Word.READY);
        clock.set("2026-04-22T14:00:00Z");
        fleet.turnDay(CHICAGO);
        assertThat(readiness(sump).word()).isEqualTo(Word.LIMITS);
        assertThat(kinds(readiness(sump))).containsExactly(ReasonKind.CHECK_LATE);
        Reason late = readiness(sump).against().get(0);
        assertThat(late.address()).isEqualTo("/tasks/" + late.subjectId());
        assertThat(late.on()).isEqualTo("2026-04-14");

        sign(sump, Phase.MONTHLY, ilse);
        assertThat(readiness(sump).word()).isEqualTo(Word.READY);
        happenings.report(
                HappeningDraft.atSite(
                        HappeningKind.STORM, clock.instant(), sump.stand().siteId(), null),
                ilse);
        assertThat(readiness(sump).word()).isEqualTo(Word.LIMITS);
        assertThat(kinds(readiness(sump))).containsExactly(ReasonKind.CHECK_DUE);
        clock.set("2026-04-25T14:00:00Z");
        fleet.turnDay(CHICAGO);
        assertThat(readiness(sump).word()).isEqualTo(Word.UNKNOWN);
        sign(sump, Phase.AFTER_STORM, ilse);
        assertThat(readiness(sump).word()).isEqualTo(Word.READY);
    }

    private FleetQuery text(String text) {
        return new FleetQuery(text, null, null, null, false, null, false, FleetQuery.Sort.TAG, 0, 9);
    }

    private List<String> tags(FleetQuery query) {
        return fleet.find(query).rows().stream().map(FleetRow::tag).toList();
    }

    @Test
    void saysEveryReasonInPlainWords() {
        Show show = new Show(UnitSystem.US, Locale.US, LocalDate.of(2026, 3, 14));
        for (Word word : Word.values()) {
            assertThat(messages.getMessage(word.code(), null, Locale.US)).isNotBlank();
        }
        for (ReasonKind kind : ReasonKind.values()) {
            assertThat(messages.getMessage(Reason.of(kind, Word.UNKNOWN).code(), null, Locale.US))
                    .isNotBlank();
        }
        Unit unit = yard.unit("BF-07");
        readings.recordFlowTest(flowTest(unit.id(), clock.instant(), 28.3), ilse);
        findings.write(FindingDraft.about(unit.id(), 2, "Plate bent"), ilse);

        assertThat(readiness(unit).reasons())
                .extracting(reason -> messages.getMessage(reason.code(), reason.arguments(show), Locale.US)
                        .replace('\u00a0', ' '))
                .contains(
                        "Severity 2: Plate bent",
                        "Opening 2026 is not signed, due 20 Mar",
                        "No electrical test on record")
                .anyMatch(
                        words -> words.matches(
                                "7\\d % ± \\d+ % of reference at 9\\.8 ft, 1 test, 14 Mar: below 80 %, only for jobs that its tested flow can do"));
    }
}
