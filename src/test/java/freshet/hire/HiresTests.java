package freshet.hire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import freshet.FreshetTest;
import freshet.TestClock;
import freshet.care.Care;
import freshet.care.CareYard;
import freshet.checklists.Phase;
import freshet.findings.Finding;
import freshet.findings.FindingDraft;
import freshet.findings.Findings;
import freshet.findings.HoldKind;
import freshet.findings.Why;
import freshet.fleet.Fleet;
import freshet.fleet.ReasonKind;
import freshet.fleet.Word;
import freshet.happenings.Happening;
import freshet.happenings.HappeningKind;
import freshet.happenings.Happenings;
import freshet.people.NotFound;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Stale;
import freshet.places.CustomerDraft;
import freshet.places.Places;
import freshet.pumps.PumpKind;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import freshet.pumps.UnitDraft;
import freshet.pumps.Whereabouts;
import freshet.readings.MeterKind;
import freshet.readings.Readings;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;

/** What goes out, what is refused, and how it comes back. */
@FreshetTest
class HiresTests {

    @Autowired
    Hires hires;

    @Autowired
    HireYard desk;

    @Autowired
    Fleet fleet;

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

    Person ilse;
    Person teo;

    @BeforeEach
    void springMorning() {
        clock.set("2026-03-14T14:00:00Z");
        ilse = yard.ilse();
        teo = yard.teo();
    }

    private List<String> refused(IssueDraft draft) {
        return catchThrowableOfType(Refused.class, () -> hires.issue(draft, teo)).wrongs().stream()
                .map(wrong -> wrong.field() + " " + wrong.code())
                .toList();
    }

    private List<HappeningKind> happened(Unit unit) {
        return happenings.ofUnit(unit.id()).stream()
                .filter(Happening::stands)
                .map(Happening::kind)
                .toList();
    }

    private static IssueDraft with(IssueDraft draft, Set<Caution> told, boolean limitsRead, String takenBy) {
        return new IssueDraft(
                draft.unitId(),
                draft.hirer(),
                null,
                draft.outAt(),
                draft.dueBackOn(),
                null,
                null,
                null,
                takenBy,
                limitsRead,
                told,
                Set.of());
    }

    @Test
    void goesOutAndComesBackIntoQuarantineUntilTheCheckAfterHireIsSigned() {
        Unit unit = desk.ready("BF-04");
        long id = hires.issue(desk.issue(unit, "2026-03-20"), teo);
        Hire out = hires.hire(id);
        assertThat(out.kit()).extracting(Piece::quantityOut).containsExactly(1, 2, 0);
        assertThat(out.proofUntil()).isEqualTo(LocalDate.of(2027, 3, 14));
        assertThat(happenings.out(Set.of(unit.id())).get(unit.id()).dueBackOn()).isEqualTo("2026-03-20");
        assertThat(hires.count()).isEqualTo(new Hires.Count(1, 0, 0));

        clock.set("2026-03-21T16:00:00Z");
        assertThat(hires.count().late()).isEqualTo(1);
        hires.takeBack(
                id,
                new ReturnDraft(
                        clock.instant(),
                        null,
                        null,
                        "Muddy",
                        Liquid.FOUL,
                        true,
                        "Cut to the copper by the plug",
                        Map.of(1, 1)),
                teo);
        Hire back = hires.hire(id);
        assertThat(back.missing())
                .extracting(Piece::description, Piece::missing)
                .containsExactly(tuple("Discharge hose", 1));
        assertThat(happened(unit))
                .containsExactlyInAnyOrder(
                        HappeningKind.HIRE_RETURN,
                        HappeningKind.DRY_RUN,
                        HappeningKind.FOUL_USE,
                        HappeningKind.HIRE_OUT);
        assertThat(happenings.out(Set.of(unit.id()))).isEmpty();
        Finding cord = findings.findingsOf(unit.id()).get(0);
        assertThat(cord.severity()).isEqualTo(Finding.DANGER);
        assertThat(cord.what()).isEqualTo("Cut to the copper by the plug");
        assertThat(fleet.readiness(unit.id()).against())
                .extracting(reason -> reason.kind())
                .contains(ReasonKind.HELD, ReasonKind.FINDING);
        assertThat(refused(desk.issue(unit, "2026-03-25"))).contains(" hire.refused.notReady");
        assertThatThrownBy(() -> hires.takeBack(id, desk.back(Liquid.CLEAN), teo))
                .isInstanceOf(Stale.class);
    }

    @Test
    void isReadyAgainOnceTheCheckAfterHireIsSigned() {
        Unit unit = desk.ready("BF-04");
        long id = hires.issue(desk.issue(unit, "2026-03-20"), teo);
        clock.set("2026-03-16T16:00:00Z");
        hires.takeBack(id, desk.back(Liquid.CLEAN), teo);
        assertThat(fleet.readiness(unit.id()).word()).isEqualTo(Word.NOT_READY);
        assertThat(refused(desk.issue(unit, "2026-03-25"))).contains(" hire.refused.notReady");
        assertThat(checksToDo(unit)).isEqualTo(1);
        clock.advance(Duration.ofHours(2));
        desk.sign(unit, Phase.AFTER_HIRE, ilse);
        assertThat(checksToDo(unit)).isZero();
        assertThat(fleet.readiness(unit.id()).word()).isEqualTo(Word.READY);
        clock.advance(Duration.ofHours(1));
        hires.issue(desk.issue(unit, "2026-03-25"), teo);
    }

    private long checksToDo(Unit unit) {
        return care.tasksOf(unit.id()).stream()
                .filter(task -> task.open() && task.phase() == Phase.AFTER_HIRE)
                .count();
    }

    @Test
    void refusesWhatIsNotProvenFitForEveryDay() {
        Unit untested = yard.unit("BF-01");
        assertThat(refused(desk.issue(untested, "2026-03-20"))).contains(" hire.refused.unknown");
        Unit unit = desk.ready("BF-04");
        assertThat(refused(desk.issue(unit, "2027-03-15"))).containsExactly("dueBackOn hire.refused.proofEnds");
        assertThat(catchThrowableOfType(Refused.class, () -> hires.issue(desk.issue(unit, "2027-03-15"), teo))
                        .wrongs()
                        .get(0)
                        .arguments())
                .containsExactly("14 Mar 2027");

        long cord = findings.write(FindingDraft.about(unit.id(), 4, "Cord nicked"), teo);
        assertThat(refused(desk.issue(unit, "2026-03-20"))).contains(" hire.refused.notReady");
        assertThat(findings.finding(cord).open()).isTrue();

        Unit tagged = desk.ready("BF-05");
        findings.hold(tagged.id(), HoldKind.TAGGED_OUT, Why.typed("Hums"), teo);
        assertThat(refused(desk.issue(tagged, "2026-03-20"))).contains(" hire.refused.notReady");

        long osterby = places.addCustomer(new CustomerDraft("Osterby", null, null), ilse)
                .id();
        Unit customers = pumps.register(
                new UnitDraft(
                        "OS-01", null, yard.model(PumpKind.UTILITY_SUBMERSIBLE), osterby, CareYard.LONG_AGO, null),
                Whereabouts.at(yard.brackenfold().id()),
                ilse);
        assertThat(refused(desk.issue(customers, "2026-03-20"))).contains(" hire.refused.customers");
        assertThat(hires.count().out()).isZero();
    }

    @Test
    void sendsAnEngineOutWithoutElectricalProofButNotUntold() {
        Unit engine = desk.readyEngine("BF-22");
        Unit electric = desk.ready("BF-04");
        assertThat(Caution.of(electric))
                .contains(Caution.ROPE, Caution.GROUND_FAULT)
                .doesNotContain(Caution.FUEL);
        Set<Caution> some = EnumSet.copyOf(Caution.of(electric));
        some.remove(Caution.DRY_RUN);
        assertThat(refused(with(desk.issue(electric, "2026-03-20"), some, false, " ")))
                .containsExactly("takenBy hire.takenBy.missing", "told hire.told.missing");
        assertThat(Caution.of(engine))
                .contains(Caution.CARBON_MONOXIDE, Caution.FUEL)
                .doesNotContain(Caution.ROPE);
        assertThat(refused(desk.issue(engine, "2027-03-15"))).containsExactly("dueBackOn hire.refused.performanceEnds");
        assertThat(hires.hire(hires.issue(desk.issue(engine, "2027-03-14"), teo))
                        .proofUntil())
                .isNull();
    }

    @Test
    void readsLimitsOutBeforeItGoes() {
        Unit unit = desk.ready("BF-07");
        findings.write(FindingDraft.about(unit.id(), 2, "Plate gap 1.5 mm"), teo);
        IssueDraft draft = desk.issue(unit, "2026-03-20");
        assertThat(refused(with(draft, draft.told(), false, "Jo")))
                .containsExactly("limitsRead hire.limitsRead.missing");
        Hire out = hires.hire(hires.issue(draft, teo));
        assertThat(out.limits()).extracting(reason -> reason.words()).containsExactly("Plate gap 1.5 mm");
    }

    @Test
    void keepsMomentsAndMeterInOrder() {
        Unit unit = desk.ready("BF-04");
        readings.fitMeter(unit.id(), MeterKind.RUN_HOURS, clock.instant(), new BigDecimal("412.6"), null, null, teo);
        clock.advance(Duration.ofHours(5));
        IssueDraft draft = desk.issue(unit, "2026-03-20");
        IssueDraft below = new IssueDraft(
                unit.id(),
                "Jo",
                null,
                draft.outAt(),
                draft.dueBackOn(),
                new BigDecimal("400"),
                101,
                null,
                "Jo",
                true,
                draft.told(),
                Set.of());
        assertThat(refused(below)).containsExactly("fuel hire.fuel.range");
        IssueDraft onlyBelow = new IssueDraft(
                unit.id(),
                "Jo",
                null,
                draft.outAt(),
                draft.dueBackOn(),
                new BigDecimal("400"),
                80,
                null,
                "Jo",
                true,
                draft.told(),
                Set.of());
        assertThat(refused(onlyBelow)).containsExactly("hours readings.value.below");
        assertThat(hires.openOf(unit.id())).isEmpty();
        assertThat(refused(new IssueDraft(
                        unit.id(),
                        "Jo",
                        null,
                        clock.instant().plusSeconds(3600),
                        LocalDate.of(2026, 3, 13),
                        null,
                        null,
                        null,
                        "Jo",
                        true,
                        draft.told(),
                        Set.of())))
                .containsExactly("outAt hire.at.future", "dueBackOn hire.due.beforeOut");

        long id = hires.issue(draft, teo);
        clock.advance(Duration.ofHours(10));
        Instant early = draft.outAt().minusSeconds(60);
        ReturnDraft before = new ReturnDraft(early, null, null, null, Liquid.CLEAN, false, null, Map.of(0, 9));
        assertThat(catchThrowableOfType(Refused.class, () -> hires.takeBack(id, before, teo))
                        .wrongs())
                .extracting(wrong -> wrong.field() + " " + wrong.code())
                .containsExactly("inAt hire.inAt.beforeOut", "kit[0] hire.kit.count");
        ReturnDraft tooMuch = new ReturnDraft(
                clock.instant(), new BigDecimal("500"), null, null, Liquid.CLEAN, false, null, Map.of());
        assertThat(catchThrowableOfType(Refused.class, () -> hires.takeBack(id, tooMuch, teo))
                        .wrongs())
                .extracting(Refused.Wrong::field)
                .containsExactly("hours");
        // nothing of a refused return stays
        assertThat(hires.hire(id).open()).isTrue();
        assertThat(happened(unit)).containsExactly(HappeningKind.HIRE_OUT);
        assertThat(findings.openHolds()).isEmpty();
        hires.takeBack(
                id,
                new ReturnDraft(
                        clock.instant(), new BigDecimal("420.1"), null, null, Liquid.CLEAN, false, null, Map.of()),
                teo);
        assertThat(readings.log(unit.id(), MeterKind.RUN_HOURS).last().value()).isEqualByComparingTo("420.1");
        assertThat(hires.ofUnit(unit.id())).hasSize(1);
    }

    @Test
    void goesOutOnceWhenTwoSendItAtOnce() throws Exception {
        Unit unit = desk.ready("BF-04");
        IssueDraft draft = desk.issue(unit, "2026-03-20");
        ExecutorService two = Executors.newFixedThreadPool(2);
        try {
            List<Future<Long>> both =
                    two.invokeAll(List.of(() -> hires.issue(draft, teo), () -> hires.issue(draft, ilse)));
            int won = 0;
            for (Future<Long> each : both) {
                try {
                    each.get();
                    won++;
                } catch (ExecutionException lost) {
                    assertThat(lost).hasCauseInstanceOf(Stale.class);
                }
            }
            assertThat(won).isEqualTo(1);
        } finally {
            two.shutdownNow();
        }
        assertThat(hires.ofUnit(unit.id())).hasSize(1);
        assertThat(happened(unit)).containsExactly(HappeningKind.HIRE_OUT);
    }

    @Test
    void staysLongerOnlyAsLongAsItsProofHolds() {
        Unit unit = desk.ready("BF-04");
        long id = hires.issue(desk.issue(unit, "2026-03-20"), teo);
        hires.extend(id, 0, LocalDate.of(2026, 4, 2), teo);
        assertThat(happenings.out(Set.of(unit.id())).get(unit.id()).dueBackOn()).isEqualTo("2026-04-02");
        assertThat(hires.extensions(id)).singleElement().satisfies(each -> {
            assertThat(each.wasDueOn()).isEqualTo("2026-03-20");
            assertThat(each.byName()).isEqualTo("Teo Brandt");
        });
        assertThatThrownBy(() -> hires.extend(id, 0, LocalDate.of(2026, 4, 3), teo))
                .isInstanceOf(Stale.class);
        assertThat(catchThrowableOfType(Refused.class, () -> hires.extend(id, 1, LocalDate.of(2027, 3, 15), teo))
                        .wrongs())
                .extracting(Refused.Wrong::code)
                .containsExactly("hire.refused.proofEnds");
        assertThatThrownBy(() -> hires.extend(id + 99, 0, LocalDate.of(2026, 4, 3), teo))
                .isInstanceOf(NotFound.class);
    }

    @Test
    void swapsBothOrNeither() {
        Unit wrong = desk.ready("BF-04");
        Unit right = desk.ready("BF-05");
        long id = hires.issue(desk.issue(wrong, "2026-03-20"), teo);
        clock.advance(Duration.ofHours(3));
        IssueDraft untold = with(desk.issue(right, "2026-03-20"), Set.of(), false, "Jo");
        assertThat(catchThrowableOfType(
                                Refused.class,
                                () -> hires.swap(id, desk.back(Liquid.CLEAN), SwapReason.WRONG_PUMP, untold, teo))
                        .wrongs())
                .extracting(Refused.Wrong::field)
                .containsExactly("out.told");
        assertThat(hires.hire(id).open()).isTrue();

        long next =
                hires.swap(id, desk.back(Liquid.CLEAN), SwapReason.WRONG_PUMP, desk.issue(right, "2026-03-20"), teo);
        assertThat(hires.hire(id).back().swappedToTag()).isEqualTo("BF-05");
        assertThat(hires.hire(next).swappedFromTag()).isEqualTo("BF-04");
        assertThat(happenings.out(Set.of(wrong.id(), right.id()))).containsOnlyKeys(right.id());

        DeskFigures figures = hires.figures(LocalDate.of(2026, 3, 14), LocalDate.of(2026, 3, 14));
        assertThat(figures.issued()).isEqualTo(2);
        assertThat(figures.wrongPumpPer100()).isEqualTo(50.0);
        assertThat(figures.inQuarantine()).isEqualTo(1);
    }

    /** BF-04 out on 14 to 16 March and in quarantine to the 18th, BF-05 never out, BF-06 stopped by a finding on the 15th and 16th. */
    @Test
    void countsDaysOutOfDaysAvailable() {
        Unit out = desk.ready("BF-04");
        desk.ready("BF-05");
        Unit stopped = desk.ready("BF-06");
        long id = hires.issue(desk.issue(out, "2026-03-20"), teo);
        clock.set("2026-03-15T16:00:00Z");
        long finding = findings.write(FindingDraft.about(stopped.id(), 3, "Seal weeps"), teo);
        clock.set("2026-03-16T16:00:00Z");
        hires.takeBack(id, desk.back(Liquid.CLEAN), teo);
        findings.close(finding, 0, "New seal", ilse);
        clock.set("2026-03-18T16:00:00Z");
        desk.sign(out, Phase.AFTER_HIRE, ilse);
        hires.turnAway(new TurnAwayDraft(yard.brackenfold().id(), null, TurnAwayReason.ALL_OUT, null, "2 in"), teo);

        DeskFigures figures = hires.figures(LocalDate.of(2026, 3, 12), LocalDate.of(2026, 3, 18));
        DeskFigures.Line all = figures.all();
        assertThat(all.units()).isEqualTo(3);
        assertThat(all.neverOut()).isEqualTo(2);
        assertThat(all.daysKept()).isEqualTo(21);
        assertThat(all.daysOut()).isEqualTo(3);
        // the 17th and 18th in quarantine; the 16th counts as out; the finding's 15th and 16th
        assertThat(all.daysLeftOut()).isEqualTo(4);
        assertThat(all.share()).isCloseTo(3.0 / 17, within(1e-12));
        assertThat(figures.meanQuarantineDays()).isCloseTo(2.0, within(1e-9));
        assertThat(figures.turnAwayReasons()).containsExactly(Map.entry(TurnAwayReason.ALL_OUT, 1));
    }
}
