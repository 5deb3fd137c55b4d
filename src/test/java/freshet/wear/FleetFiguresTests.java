package freshet.wear;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import freshet.FreshetTest;
import freshet.TestClock;
import freshet.care.CareYard;
import freshet.pumps.PumpKind;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import freshet.reliability.Lives;
import freshet.reliability.ProductLimit;
import freshet.reliability.Recurrence;
import freshet.reliability.WeibullFit;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;

/** A fleet small enough to be reckoned by hand. */
@FreshetTest
class FleetFiguresTests {

    @Autowired
    Wear wear;

    @Autowired
    CareYard yard;

    @Autowired
    WearYard past;

    @Autowired
    Pumps pumps;

    @Autowired
    TestClock clock;

    @BeforeEach
    void atTheEndOfTheYear() {
        // midnight in Chicago
        clock.set("2026-01-01T06:00:00Z");
    }

    private Unit unit(String tag) {
        return yard.unit(tag, PumpKind.UTILITY_SUBMERSIBLE, yard.brackenfold().id(), LocalDate.of(2025, 1, 1));
    }

    private void failed(Unit unit, String day, String mended) {
        long finding = past.found(unit, WearYard.noon(day), 3, "Stopped.");
        if (mended != null) {
            past.closed(finding, WearYard.noon(mended), "Mended.");
        }
    }

    private void eightUnits() {
        Unit a = unit("A");
        past.read(a, "2025-01-01", 0);
        past.read(a, "2025-04-01", 100);
        past.read(a, "2025-12-31", 250);
        failed(a, "2025-04-01", "2025-04-03");
        Unit b = unit("B");
        past.read(b, "2025-01-01", 400);
        past.read(b, "2025-12-31", 700);
        Unit c = unit("C");
        past.read(c, "2025-01-01", 0);
        past.read(c, "2025-07-01", 150);
        pumps.retire(c.id(), pumps.unit(c.id()).version(), LocalDate.of(2025, 7, 2), "sold", past.ilse());
        Unit d = unit("D");
        past.read(d, "2025-01-01", 120);
        past.read(d, "2025-10-01", 300);
        failed(d, "2025-10-01", null);
        Unit e = unit("E");
        failed(e, "2025-05-01", "2025-05-02");
        Unit f = unit("F");
        past.read(f, "2025-06-01", 50);
        past.read(f, "2025-12-31", 90);
        failed(f, "2025-03-01", "2025-03-02");
        past.read(unit("G"), "2025-06-01", 10);
        Unit h = unit("H");
        past.read(h, "2025-01-01", 0);
        past.read(h, "2025-09-01", 80);
        failed(h, "2025-11-01", "2025-11-06");
    }

    private FleetFigures figures() {
        return wear.figures(null).orElseThrow().all();
    }

    @Test
    void countsLivesUntilTheFirstFailureWithTheHoursOnEntry() {
        eightUnits();
        FleetFigures figures = figures();
        assertThat(figures.units()).isEqualTo(8);
        assertThat(figures.metered()).isEqualTo(7);
        assertThat(figures.failures()).isEqualTo(5);
        assertThat(figures.leftOut()).isEqualTo(new FleetFigures.LeftOut(1, 1, 1, 1));

        // lives: A 0 to 100 failed, B 400 to 700, C 0 to 150, D 120 to 300 failed, H 0 to 80 failed (after its last
        // reading)
        Lives lives = figures.lives();
        assertThat(lives.n()).isEqualTo(5);
        assertThat(lives.productLimit())
                .extracting(ProductLimit.Step::hours, ProductLimit.Step::atRisk, ProductLimit.Step::failures)
                .containsExactly(tuple(80.0, 3, 1), tuple(100.0, 2, 1), tuple(300.0, 1, 1));
        assertThat(lives.productLimit().get(0).survival()).isCloseTo(2.0 / 3, within(1e-12));
        assertThat(lives.productLimit().get(1).survival()).isCloseTo(1.0 / 3, within(1e-12));
        assertThat(lives.productLimit().get(2).survival()).isZero();
        assertThat(lives.medianHours()).isEqualTo(100);
        // largest likelihood by scipy 1.17.1 minimize (Nelder-Mead) on the same five lives
        assertThat(lives.weibull().shape()).isCloseTo(0.92565377, within(1e-6));
        assertThat(lives.weibull().scaleHours()).isCloseTo(261.293815, within(1e-3));
    }

    @Test
    void addsUpTheHoursRunInCareForWhatLiesBetweenFailures() {
        eightUnits();
        FleetFigures figures = figures();
        // 250 + 300 + 150 + 180 + 40 + 0 + 80
        assertThat(figures.hoursRun()).isCloseTo(1000, within(1e-9));
        assertThat(figures.meteredFailures()).isEqualTo(3);
        assertThat(figures.mtbf().mtbfHours()).isCloseTo(1000.0 / 3, within(1e-9));
        // scipy 1.17.1: 2000/chi2.ppf(.95, 8), 2000/chi2.ppf(.975, 8), 2000/chi2.ppf(.025, 6)
        assertThat(figures.mtbf().lowerOneSided()).isCloseTo(128.97140805727943, within(1e-6));
        assertThat(figures.mtbf().interval().lower()).isCloseTo(114.06055133051659, within(1e-6));
        assertThat(figures.mtbf().interval().upper()).isCloseTo(1616.3650550790153, within(1e-5));
        // in hours of care: H 80 of 5 units, A 100 of 4, D 180 of 3
        List<Recurrence.Row> rows = figures.recurrence().table();
        assertThat(rows).extracting(Recurrence.Row::hours).containsExactly(80.0, 100.0, 180.0);
        assertThat(rows).extracting(Recurrence.Row::atRisk).containsExactly(5, 4, 3);
        assertThat(rows.get(2).meanCumulative()).isCloseTo(1.0 / 5 + 1.0 / 4 + 1.0 / 3, within(1e-12));
        // the pooled likelihood's equation by scipy 1.17.1 brentq
        assertThat(figures.trend().shape()).isCloseTo(1.525770229728627, within(1e-9));
        assertThat(figures.trendInterval().lower()).isCloseTo(0.5823848620233463, within(1e-9));
        assertThat(figures.trendInterval().upper()).isCloseTo(3.997313367380804, within(1e-9));
    }

    @Test
    void reckonsIndicatorsByTheCalendarAndByRunHours() {
        eightUnits();
        FleetFigures figures = figures();
        // seven units the whole year; C to the end of 2 July, 183 days less the hour of daylight saving
        double required = 7 * 8760 + 183 * 24 - 1;
        // A 48, D from 1 October noon to now, E 24, F 24, H 120 (5 days over the end of daylight saving, by UTC)
        double down = 48 + 91.5 * 24 + 24 + 24 + 120;
        assertThat(figures.calendar().metbfCalendarHours()).isCloseTo(required / 5, within(1e-6));
        assertThat(figures.calendar().meanDownHours()).isCloseTo(down / 5, within(1e-6));
        assertThat(figures.calendar().availabilityTimeBased()).isCloseTo(1 - down / required, within(1e-12));
        assertThat(figures.calendar().meanRepairHours()).isNull();
        assertThat(figures.calendar().meanActiveRepairHours()).isNull();
        double downMetered = 48 + 91.5 * 24 + 120;
        assertThat(figures.operating().mtbfOperatingHours()).isCloseTo(1000.0 / 3, within(1e-9));
        assertThat(figures.operating().availabilityRestoration()).isCloseTo(1000 / (1000 + downMetered), within(1e-12));
        assertThat(figures.operating().mtbfLowerOneSided95()).isCloseTo(128.97140805727943, within(1e-6));
        assertThat(figures.failuresPerYear()).isCloseTo(5 / (required / 8766), within(1e-9));
    }

    @Test
    void keepsModelsApart() {
        eightUnits();
        Unit other = yard.unit("S", PumpKind.SUMP_WITH_FLOAT, yard.brackenfold().id(), LocalDate.of(2025, 1, 1));
        past.read(other, "2025-01-01", 0);
        past.read(other, "2025-12-31", 500);
        Figured figured = wear.figures(null).orElseThrow();
        assertThat(figured.all().units()).isEqualTo(9);
        assertThat(figured.models()).extracting(line -> line.figures().units()).containsExactly(1, 8);
        FleetFigures one =
                wear.figures(yard.model(PumpKind.SUMP_WITH_FLOAT)).orElseThrow().all();
        assertThat(one).isEqualTo(figured.models().get(0).figures());
        // all censored: no curve, no law, no mean, but a bound of 500/-ln 0.05
        assertThat(one.lives().failures()).isZero();
        assertThat(one.lives().weibull().status()).isEqualTo(WeibullFit.Status.NO_FAILURES);
        assertThat(one.mtbf().mtbfHours()).isNull();
        assertThat(one.mtbf().lowerOneSided()).isCloseTo(500 / -Math.log(0.05), within(1e-9));
        assertThat(one.calendar().metbfCalendarHours()).isNull();
        assertThat(one.calendar().availabilityTimeBased()).isEqualTo(1);
        assertThat(one.trendInterval()).isNull();
        assertThat(wear.figures(yard.model(PumpKind.SUMP_WITH_FLOAT))
                        .orElseThrow()
                        .models())
                .isEmpty();
    }

    @Test
    void countsAllMetersTogetherAfterASwap() {
        Unit unit = unit("A");
        past.read(unit, "2025-01-01", 400);
        past.swap(unit, "2025-03-01", 450, 0);
        failed(unit, "2025-03-01", "2025-03-02");
        past.read(unit, "2025-06-01", 30);
        Lives lives = figures().lives();
        assertThat(figures().hoursRun()).isCloseTo(80, within(1e-9));
        assertThat(lives.productLimit().get(0).hours()).isCloseTo(450, within(1e-9));
    }

    @Test
    void hasNothingToSayOfAnEmptyFleetOrOneWithoutMeters() {
        FleetFigures empty = figures();
        assertThat(empty.units()).isZero();
        assertThat(empty.lives()).isNull();
        assertThat(empty.mtbf()).isNull();
        assertThat(empty.recurrence()).isNull();
        assertThat(empty.calendar()).isNull();
        assertThat(empty.operating()).isNull();
        assertThat(empty.failuresPerYear()).isNull();
        Unit unit = unit("A");
        failed(unit, "2025-05-01", "2025-05-02");
        FleetFigures dry = figures();
        assertThat(dry.leftOut().noHours()).isEqualTo(1);
        assertThat(dry.mtbf()).isNull();
        assertThat(dry.operating()).isNull();
        assertThat(dry.calendar().failures()).isEqualTo(1);
    }

    @Test
    void countsNoLifeOfAUnitThatFailedBeforeItRan() {
        Unit dead = unit("A");
        past.read(dead, "2025-01-01", 5);
        failed(dead, "2025-01-02", "2025-01-03");
        past.read(dead, "2025-02-01", 5);
        past.read(dead, "2025-03-01", 40);
        FleetFigures figures = figures();
        assertThat(figures.leftOut().neverRan()).isEqualTo(1);
        assertThat(figures.lives()).isNull();
        assertThat(figures.meteredFailures()).isEqualTo(1);
        assertThat(figures.hoursRun()).isCloseTo(35, within(1e-9));
        assertThat(figures.trend().events()).isZero();
        assertThat(figures.recurrence().table().get(0).hours()).isZero();
    }

    @Test
    void looksAwayFromWhatHappenedAfterAUnitWasRetired() {
        Unit unit = unit("A");
        past.read(unit, "2025-01-01", 0);
        past.read(unit, "2025-06-01", 100);
        past.read(unit, "2025-08-01", 161);
        failed(unit, "2025-08-01", null);
        pumps.retire(unit.id(), pumps.unit(unit.id()).version(), LocalDate.of(2025, 7, 1), "sold", past.ilse());
        FleetFigures figures = figures();
        assertThat(figures.failures()).isZero();
        // 30 days and a part of one after 1 June noon, at one hour a day
        assertThat(figures.hoursRun()).isBetween(130.0, 131.0);
        assertThat(figures.lives().failures()).isZero();
    }
}
