package freshet.happenings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import freshet.FreshetTest;
import freshet.TestClock;
import freshet.care.CareYard;
import freshet.people.NotFound;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Stale;
import freshet.places.Places;
import freshet.places.Position;
import freshet.places.PositionDraft;
import freshet.places.PositionKind;
import freshet.places.Site;
import freshet.pumps.PumpKind;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import freshet.pumps.Whereabouts;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.context.event.ApplicationEvents;
import org.springframework.test.context.event.RecordApplicationEvents;

@FreshetTest
@RecordApplicationEvents
class HappeningsTests {

    static final Instant NOW = Instant.parse("2026-03-26T20:00:00Z");
    static final Instant STORM = Instant.parse("2026-03-26T08:00:00Z");

    @Autowired
    Happenings happenings;

    @Autowired
    Places places;

    @Autowired
    Pumps pumps;

    @Autowired
    CareYard yard;

    @Autowired
    TestClock clock;

    @Autowired
    ApplicationEvents heard;

    Person teo;
    Site dyer;
    Position pit;
    Unit moved;
    Unit stayed;

    @BeforeEach
    void twoUnitsOfWhichOneMoved() {
        clock.set("2026-03-01T12:00:00Z");
        teo = yard.teo();
        dyer = yard.site("Dyer Court", CareYard.CHICAGO);
        pit = places.addPosition(new PositionDraft(dyer.id(), "North pit", PositionKind.PIT, null), yard.ilse());
        moved = yard.unit("QM-104", PumpKind.SUMP_WITH_FLOAT, dyer.id(), CareYard.LONG_AGO);
        stayed = yard.unit("QM-105", PumpKind.SUMP_WITH_FLOAT, dyer.id(), CareYard.LONG_AGO);
        clock.set(NOW.toString());
        pumps.move(moved.id(), new Whereabouts(dyer.id(), pit.id(), null), STORM.minusSeconds(3600), null, yard.ilse());
        pumps.move(moved.id(), Whereabouts.at(yard.brackenfold().id()), STORM.plusSeconds(3600), null, yard.ilse());
    }

    private List<HappeningKind> of(Unit unit) {
        return happenings.ofUnit(unit.id()).stream()
                .filter(Happening::stands)
                .map(Happening::kind)
                .toList();
    }

    private List<Set<Long>> events() {
        return heard.stream(HappeningReported.class)
                .map(HappeningReported::unitIds)
                .toList();
    }

    @Test
    void touchTheUnitsThatStoodThereAtThatMoment() {
        happenings.report(HappeningDraft.atSite(HappeningKind.STORM, STORM, dyer.id(), "Gauge 3.1 in"), teo);
        happenings.report(HappeningDraft.inPosition(HappeningKind.HIGH_WATER, STORM, pit.id(), null), teo);
        happenings.report(
                HappeningDraft.inPosition(HappeningKind.POWER_FAILURE, STORM.plusSeconds(7200), pit.id(), null), teo);
        happenings.report(
                HappeningDraft.toUnit(HappeningKind.DRY_RUN, STORM.plusSeconds(9000), stayed.id(), null), teo);

        assertThat(of(moved)).containsExactly(HappeningKind.HIGH_WATER, HappeningKind.STORM);
        assertThat(of(stayed)).containsExactly(HappeningKind.DRY_RUN, HappeningKind.STORM);
        // the power failed in a pit where no pump stood any more
        assertThat(events()).containsExactly(Set.of(moved.id(), stayed.id()), Set.of(moved.id()), Set.of(stayed.id()));

        Happening storm = happenings.ofUnit(stayed.id()).get(1);
        assertThat(storm.siteName()).isEqualTo("Dyer Court");
        assertThat(storm.zone()).isEqualTo(CareYard.CHICAGO);
        assertThat(storm.note()).isEqualTo("Gauge 3.1 in");
        assertThat(storm.reportedByName()).isEqualTo("Teo Brandt");
    }

    @Test
    void areKeptOnceHoweverOftenTheSameIsSent() {
        HappeningDraft storm = HappeningDraft.atSite(HappeningKind.STORM, STORM, dyer.id(), null);
        List<Long> ids = happenings.reportAll(
                List.of(
                        storm,
                        HappeningDraft.atSite(
                                HappeningKind.STORM, STORM, yard.brackenfold().id(), null)),
                teo);
        assertThat(happenings.report(storm, teo)).isEqualTo(ids.get(0));
        assertThat(happenings.count(HappeningKind.STORM, true)).isEqualTo(2);
        assertThat(events()).hasSize(1);
        happenings.withdraw(ids.get(0), "Next town", teo);
        assertThat(happenings.report(storm, teo)).isNotEqualTo(ids.get(0));
    }

    @Test
    void areTakenBackWithAReasonAndOnlyOnce() {
        long id = happenings.report(HappeningDraft.atSite(HappeningKind.STORM, STORM, dyer.id(), null), teo);
        assertThat(catchThrowableOfType(Refused.class, () -> happenings.withdraw(id, " ", teo))
                        .wrongs())
                .extracting(wrong -> wrong.field() + " " + wrong.code())
                .containsExactly("why happenings.why.missing");
        happenings.withdraw(id, "It passed by", yard.ilse());
        assertThat(of(stayed)).isEmpty();
        assertThat(events()).hasSize(2);
        Happening taken = happenings.recent(null, true, 0, 10).get(0);
        assertThat(taken.withdrawnWhy()).isEqualTo("It passed by");
        assertThat(taken.withdrawnByName()).isEqualTo("Ilse Marrow");
        assertThatThrownBy(() -> happenings.withdraw(id, "Again", teo)).isInstanceOf(Stale.class);
        assertThatThrownBy(() -> happenings.withdraw(id + 1000, "Not there", teo))
                .isInstanceOf(NotFound.class);
    }

    @Test
    void refuseTheFutureAndTheCenturyBefore() {
        for (String wrong : new String[] {"2026-03-26T20:06:00Z at.future", "1999-12-31T23:59:00Z at.old"}) {
            Instant at = Instant.parse(wrong.substring(0, 20));
            HappeningDraft draft = HappeningDraft.atSite(HappeningKind.STORM, at, dyer.id(), null);
            assertThat(catchThrowableOfType(Refused.class, () -> happenings.report(draft, teo))
                            .wrongs())
                    .extracting(Refused.Wrong::code)
                    .containsExactly("happenings." + wrong.substring(21));
        }
        happenings.report(HappeningDraft.atSite(HappeningKind.STORM, NOW.plusSeconds(299), dyer.id(), null), teo);
        HappeningDraft nowhere = HappeningDraft.atSite(HappeningKind.STORM, STORM, 999_999, null);
        assertThatThrownBy(() -> happenings.report(nowhere, teo)).isInstanceOf(NotFound.class);
        HappeningDraft noUnit = HappeningDraft.atSite(HappeningKind.HIRE_RETURN, STORM, dyer.id(), null);
        assertThatThrownBy(() -> happenings.report(noUnit, teo)).isInstanceOf(IllegalArgumentException.class);
        assertThat(happenings.count(null, false)).isEqualTo(1);
    }

    @Test
    void sayWhoIsOutOnHireAndUntilWhen() {
        LocalDate friday = LocalDate.of(2026, 3, 27);
        happenings.report(HappeningDraft.hireOut(STORM, moved.id(), friday), teo);
        happenings.report(HappeningDraft.hireOut(STORM, stayed.id(), friday), teo);
        happenings.report(
                HappeningDraft.toUnit(HappeningKind.HIRE_RETURN, STORM.plusSeconds(60), stayed.id(), null), teo);
        Set<Long> both = Set.of(moved.id(), stayed.id());
        assertThat(happenings.out(both)).containsOnlyKeys(moved.id());
        assertThat(happenings.out(both).get(moved.id()))
                .isEqualTo(new Out(moved.id(), STORM, friday, CareYard.CHICAGO));

        happenings.extendHire(moved.id(), friday.plusDays(7), teo);
        assertThat(happenings.out(both).get(moved.id()).dueBackOn()).isEqualTo(friday.plusDays(7));
        assertThat(happenings.out(both).get(moved.id()).since()).isEqualTo(STORM);
        assertThatThrownBy(() -> happenings.extendHire(yard.unit("BF-01").id(), friday, teo))
                .isInstanceOf(NotFound.class);
    }
}
