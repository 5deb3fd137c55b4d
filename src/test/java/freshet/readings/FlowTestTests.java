package freshet.readings;

import static freshet.readings.Capacity.Reference.OWN_FIRST_TEST;
import static freshet.readings.Capacity.Reference.RATED_CURVE;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import freshet.FreshetTest;
import freshet.TestClock;
import freshet.hydraulics.FlowTestReduction.StatedBy;
import freshet.hydraulics.HoseKind;
import freshet.measures.UnitSystem;
import freshet.people.NotFound;
import freshet.people.People;
import freshet.people.Refused;
import freshet.people.Refused.Wrong;
import freshet.places.Places;
import freshet.pumps.CurvePoint;
import freshet.pumps.ModelDraft;
import freshet.pumps.Pumps;
import freshet.pumps.Ratings;
import freshet.readings.FlowTestDraft.Container;
import freshet.readings.FlowTestDraft.Gauge;
import freshet.readings.FlowTestDraft.Piece;
import freshet.readings.FlowTestResult.Remark;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.context.event.ApplicationEvents;
import org.springframework.test.context.event.RecordApplicationEvents;

@FreshetTest
@RecordApplicationEvents
class FlowTestTests {

    private static final Instant SPRING = Instant.parse("2026-03-14T12:00:00Z");
    private static final double LITRES_PER_GALLON = 3.785411784;
    private static final double M3H_PER_GPM = 0.2271247070;

    /** Flat at its start: 9.1 m falls by a tenth over the first third of the flow. */
    private static final List<CurvePoint> FLAT =
            List.of(new CurvePoint(0, 9.1), new CurvePoint(3, 8.6), new CurvePoint(6, 6.6), new CurvePoint(9, 0.5));

    @Autowired
    Readings readings;

    @Autowired
    People people;

    @Autowired
    Places places;

    @Autowired
    Pumps pumps;

    @Autowired
    TestClock clock;

    @Autowired
    ApplicationEvents events;

    Yard yard;
    long unit;

    @BeforeEach
    void openTheYard() {
        clock.set("2026-06-01T12:00:00Z");
        yard = new Yard(people, places, pumps, UnitSystem.US);
        unit = yard.unit("BF-07", exact(Yard.FT_02)).id();
    }

    private ModelDraft exact(List<CurvePoint> points) {
        return yard.model("Exact " + points.hashCode(), 0, Ratings.NONE, points);
    }

    /** Reference case FT-02: 60 L drum, 3 m lift, ten metres of 1½ in hose. */
    private FlowTestDraft drum(Instant at, Double... seconds) {
        return drum(at, "RIG-1", 3.0, List.of(seconds));
    }

    private FlowTestDraft drum(Instant at, String rig, Double liftM, List<Double> seconds) {
        return test(at, rig, new Container(60, 0.5, 0.2, null), liftM, null, seconds);
    }

    private FlowTestDraft test(
            Instant at, String rig, Container container, Double liftM, Gauge gauge, List<Double> seconds) {
        return new FlowTestDraft(
                unit,
                at,
                rig,
                container,
                seconds,
                liftM,
                gauge,
                0.03,
                20,
                31.75,
                1,
                List.of(new Piece(HoseKind.RUBBER_LINED_HOSE.name(), 38.1, 10, 0.01, null, 0.8)),
                117.0,
                4.4,
                null,
                null);
    }

    private static Instant weeks(int later) {
        return SPRING.plus(Duration.ofDays(7L * later));
    }

    private Wrong refusal(FlowTestDraft draft) {
        return refusal(() -> readings.workOut(draft, yard.me));
    }

    private static Wrong refusal(ThrowingCallable act) {
        Refused refused = catchThrowableOfType(Refused.class, act);
        assertThat(refused).as("was not refused").isNotNull();
        return refused.wrongs().get(0);
    }

    @Test
    void worksOutTheReferenceCase() {
        FlowTestResult result = readings.workOut(drum(SPRING, 29.8, 30.5, 30.1), yard.me);

        // FT-02 of the hydraulics cases: scipy, GUM first order, tolerance 0.2 % and 2 % of the uncertainty
        assertThat(result.figures().flowM3h()).isCloseTo(7.168141593, within(1e-8));
        assertThat(result.figures().headM()).isCloseTo(4.154529071, within(0.002 * 4.15));
        Capacity capacity = result.capacity();
        assertThat(capacity.fraction()).isCloseTo(0.7716058417, within(0.002 * 0.77));
        assertThat(capacity.expandedUncertainty()).isCloseTo(0.02021625728, within(0.02 * 0.0202));
        assertThat(capacity.referenceFlowM3h()).isCloseTo(9.289900627, within(0.002 * 9.3));
        assertThat(capacity.reference()).isEqualTo(RATED_CURVE);
        assertThat(capacity.statedBy()).isEqualTo(StatedBy.FLOW);
        assertThat(result.firstTest()).isTrue();
        assertThat(result.remarks()).containsExactly(Remark.HEAD_COMPUTED);
        assertThat(result.id()).isNull();
        assertThat(readings.flowTests(unit)).isEmpty();
        assertThat(readings.capacity(unit)).isEmpty();
    }

    @Test
    void dividesTheMissingFlowBetweenPumpAndLine() {
        FlowTestResult.Figures figures =
                readings.workOut(drum(SPRING, 29.8, 30.5, 30.1), yard.me).figures();

        assertThat(figures.split().ratedFlowM3h()).isGreaterThan(figures.split().expectedFlowM3h());
        assertThat(figures.split().ratedFlowM3h()
                        - figures.split().lostToLineM3h()
                        - figures.split().lostToPumpM3h())
                .isCloseTo(figures.flowM3h(), within(1e-9));
        assertThat(figures.losses().liftM()
                        + figures.losses().frictionM()
                        + figures.losses().fittingsM()
                        + figures.losses().exitM())
                .isCloseTo(figures.headM(), within(1e-9));
    }

    @Test
    void keepsATestAsItWasMeasured() {
        FlowTestDraft draft = drum(SPRING, 29.8, 30.5, 30.1);
        long id = readings.recordFlowTest(draft, yard.me);

        FlowTestResult kept = readings.flowTest(id);
        assertThat(kept.facts()).isEqualTo(draft);
        assertThat(kept.recordedBy()).isEqualTo(yard.me.id());
        assertThat(kept.capacity()).isEqualTo(readings.capacity(unit).orElseThrow());
        assertThat(kept.capacity().testId()).isEqualTo(id);
        assertThat(events.stream(FlowTestRecorded.class)).containsExactly(new FlowTestRecorded(unit, id));
    }

    @Test
    void readsTheHeadFromAGauge() {
        Gauge gauge = new Gauge(35, 0.5, 0.3, 38.1);
        FlowTestDraft draft =
                test(SPRING, null, new Container(60, 0.5, 0.2, null), null, gauge, List.of(30.0, 30.2, 29.9));
        FlowTestResult kept = readings.flowTest(readings.recordFlowTest(draft, yard.me));

        assertThat(kept.facts()).isEqualTo(draft);
        double velocity = kept.figures().flowM3h() / 3600 / (Math.PI / 4 * 0.0381 * 0.0381);
        assertThat(kept.figures().headM())
                .isCloseTo(35_000 / (998.2072 * 9.80665) + 0.3 + velocity * velocity / (2 * 9.80665), within(1e-4));
        assertThat(kept.figures().split()).isNull();
        assertThat(kept.remarks()).doesNotContain(Remark.HEAD_COMPUTED);
    }

    @Test
    void keepsTheSameTestSentTwiceOnce() {
        long id = readings.recordFlowTest(drum(SPRING, 29.8, 30.5, 30.1), yard.me);
        assertThat(readings.recordFlowTest(drum(SPRING, 29.8, 30.5, 30.1), yard.me))
                .isEqualTo(id);
        assertThat(refusal(() -> readings.recordFlowTest(drum(SPRING, 31.0, 30.5, 30.1), yard.me)))
                .isEqualTo(Wrong.at("at", "readings.test.there"));
        assertThat(readings.flowTests(unit)).hasSize(1);
    }

    @Test
    void holdsLaterTestsAgainstTheUnitsOwnFirst() {
        double first = readings.flowTest(readings.recordFlowTest(drum(SPRING, 29.8, 30.5, 30.1), yard.me))
                .figures()
                .rated()
                .remainingFraction();
        long id = readings.recordFlowTest(drum(weeks(4), 34.0, 34.3, 33.9), yard.me);
        FlowTestResult later = readings.flowTest(id);

        Capacity capacity = readings.capacity(unit).orElseThrow();
        assertThat(capacity.reference()).isEqualTo(OWN_FIRST_TEST);
        assertThat(capacity.statedBy()).isEqualTo(StatedBy.FLOW);
        assertThat(capacity.tests()).isEqualTo(2);
        assertThat(capacity.onAnotherRig()).isFalse();
        // the ratio of the two fractions of the rated curve, each at its own head
        double rated = later.figures().rated().remainingFraction();
        assertThat(capacity.fraction()).isCloseTo(rated / first, within(1e-9));
        // both relative uncertainties in quadrature
        double own = readings.flowTests(unit).get(1).figures().rated().expandedUncertainty() / first;
        double its = later.figures().rated().expandedUncertainty() / rated;
        assertThat(capacity.expandedUncertainty() / capacity.fraction()).isCloseTo(Math.hypot(own, its), within(1e-9));
        assertThat(later.capacity()).isEqualTo(capacity);
        assertThat(readings.flowTests(unit).get(1).firstTest()).isTrue();
    }

    @Test
    void leavesTheToleranceOfTheRatedCurveOutOfAComparisonWithItself() {
        unit = yard.unit("BF-08").id(); // 5 % standard uncertainty of the rated curve
        readings.recordFlowTest(drum(SPRING, 29.8, 30.5, 30.1), yard.me);
        assertThat(readings.capacity(unit).orElseThrow().expandedUncertainty()).isGreaterThan(0.077);
        readings.recordFlowTest(drum(weeks(1), 29.8, 30.5, 30.1), yard.me);
        Capacity again = readings.capacity(unit).orElseThrow();
        assertThat(again.fraction()).isCloseTo(1, within(1e-9));
        assertThat(again.expandedUncertainty()).isLessThan(0.05);
    }

    @Test
    void statesTheHeadWhereTheCurveIsFlat() {
        unit = yard.unit("BF-09", exact(FLAT)).id();
        Container small = new Container(20, 0.1, 0.25, null);
        readings.recordFlowTest(test(SPRING, "RIG-1", small, 8.2, null, List.of(30.0, 30.2, 29.8)), yard.me);
        double first = readings.flowTests(unit).get(0).figures().rated().headFraction();
        readings.recordFlowTest(test(weeks(3), "RIG-1", small, 7.6, null, List.of(31.0, 31.2, 30.8)), yard.me);

        Capacity capacity = readings.capacity(unit).orElseThrow();
        assertThat(capacity.statedBy()).isEqualTo(StatedBy.HEAD);
        double now = readings.flowTests(unit).get(0).figures().rated().headFraction();
        assertThat(capacity.fraction()).isCloseTo(now / first, within(1e-9));
        assertThat(capacity.referenceHeadM()).isCloseTo(capacity.headM() / capacity.fraction(), within(1e-9));
        assertThat(readings.flowTests(unit).get(0).remarks()).contains(Remark.FLAT_CURVE);
    }

    @Test
    void marksATestOnAnotherRigThanTheFirst() {
        readings.recordFlowTest(drum(SPRING, "RIG-1", 3.0, List.of(29.8, 30.5, 30.1)), yard.me);
        readings.recordFlowTest(drum(weeks(1), "rig-1 ", 3.0, List.of(30.0, 30.5, 30.1)), yard.me);
        assertThat(readings.capacity(unit).orElseThrow().onAnotherRig()).isFalse();
        readings.recordFlowTest(drum(weeks(2), "RIG-2", 3.0, List.of(30.0, 30.5, 30.1)), yard.me);
        assertThat(readings.capacity(unit).orElseThrow().onAnotherRig()).isTrue();
        assertThat(readings.flowTests(unit).get(0).remarks()).contains(Remark.OTHER_RIG);
        // a changed hose is another rig, whatever its name
        FlowTestDraft same = drum(weeks(3), 30.0, 30.5, 30.1);
        List<Piece> longer = List.of(new Piece("RUBBER_LINED_HOSE", 38.1, 12, 0.01, null, 0.8));
        assertThat(readings.workOut(with(same, longer), yard.me).remarks()).contains(Remark.OTHER_RIG);
    }

    private static FlowTestDraft with(FlowTestDraft draft, List<Piece> pieces) {
        return new FlowTestDraft(
                draft.unitId(),
                draft.at(),
                draft.rig(),
                draft.container(),
                draft.seconds(),
                draft.liftM(),
                draft.gauge(),
                draft.heightUncertaintyM(),
                draft.waterC(),
                draft.pumpOutletMm(),
                draft.exitLoss(),
                pieces,
                draft.volts(),
                draft.amps(),
                draft.frequencyHz(),
                draft.note());
    }

    @Test
    void takesATestBackAndComparesWithTheNextFirst() {
        long wrong = readings.recordFlowTest(drum(SPRING, 22.0, 22.1, 22.2), yard.me);
        readings.recordFlowTest(drum(weeks(1), 29.8, 30.5, 30.1), yard.me);
        assertThat(readings.capacity(unit).orElseThrow().fraction()).isLessThan(0.8);
        assertThat(refusal(() -> readings.withdrawFlowTest(wrong, " ", yard.me)))
                .isEqualTo(Wrong.at("why", "readings.why.missing"));
        readings.withdrawFlowTest(wrong, "the drum was not empty", yard.me);
        readings.withdrawFlowTest(wrong, "twice", yard.me);

        Capacity capacity = readings.capacity(unit).orElseThrow();
        assertThat(capacity.reference()).isEqualTo(RATED_CURVE);
        assertThat(capacity.tests()).isOne();
        assertThat(readings.flowTest(wrong).withdrawn().why()).isEqualTo("the drum was not empty");
        assertThat(readings.flowTests(unit))
                .extracting(FlowTestResult::firstTest)
                .containsExactly(true, false);
        assertThat(events.stream(FlowTestWithdrawn.class)).containsExactly(new FlowTestWithdrawn(unit, wrong));
        // its place is free for the right one
        readings.recordFlowTest(drum(SPRING, 29.0, 29.1, 29.2), yard.me);
        assertThat(readings.capacity(unit).orElseThrow().reference()).isEqualTo(OWN_FIRST_TEST);
    }

    @Test
    void refusesHeadsOutsideTheCurveSayingWhichWay() {
        assertThat(refusal(drum(SPRING, null, 12.0, List.of(29.8, 30.5, 30.1)))).satisfies(wrong -> {
            assertThat(wrong.field()).isEqualTo("lift");
            assertThat(wrong.code()).isEqualTo("readings.head.aboveCurve");
            assertThat(wrong.arguments().get(1)).isEqualTo("36.7\u00a0ft");
        });
        assertThat(refusal(drum(SPRING, null, -3.0, List.of(29.8, 30.5, 30.1)))).satisfies(wrong -> {
            assertThat(wrong.field()).isEqualTo("lift");
            assertThat(wrong.code()).isEqualTo("readings.head.belowCurve");
            assertThat(wrong.arguments().get(1)).isEqualTo("4.9\u00a0ft");
        });
        assertThat(refusal(drum(SPRING, null, null, List.of(29.8))))
                .isEqualTo(Wrong.at("lift", "readings.lift.missing"));
    }

    @Test
    void asksWhetherLitresMinutesOrGallonsAnHourWereMeant() {
        // 60 typed as gallons, and litres were meant
        Container gallons = new Container(60 * LITRES_PER_GALLON, 1, 0.2, null);
        assertThat(refusal(test(SPRING, null, gallons, 3.0, null, List.of(30.0, 30.5, 30.1))))
                .satisfies(wrong -> {
                    assertThat(wrong.field()).isEqualTo("container");
                    assertThat(wrong.code()).isEqualTo("readings.flow.tooMuch.litres");
                    assertThat(wrong.arguments().get(2)).isEqualTo("60");
                });
        // half a minute typed as 0.5
        assertThat(refusal(drum(SPRING, 0.5, 0.51, 0.5)).code()).isEqualTo("readings.flow.tooMuch.minutes");
        Container lake = new Container(60_000, 1, 0.2, null);
        assertThat(refusal(test(SPRING, null, lake, 3.0, null, List.of(30.0))).code())
                .isEqualTo("readings.flow.tooMuch.unknown");
        // 1890 gph read on a meter asked in gpm
        Container metered = new Container(60, 0.5, 0.2, 1890 * M3H_PER_GPM);
        assertThat(refusal(test(SPRING, null, metered, 3.0, null, List.of(30.0, 30.5, 30.1))))
                .satisfies(wrong -> {
                    assertThat(wrong.field()).isEqualTo("meterFlow");
                    assertThat(wrong.code()).isEqualTo("readings.meter.tooMuch.unit");
                    assertThat(wrong.arguments().subList(2, 5))
                            .containsExactly("gph", "1890\u00a0gph", "31.5\u00a0gpm");
                });
        Container inLitres = new Container(60, 0.5, 0.2, 119 * M3H_PER_GPM);
        assertThat(refusal(test(SPRING, null, inLitres, 3.0, null, List.of(30.0, 30.5, 30.1)))
                        .arguments())
                .contains("L/min");
    }

    @Test
    void remarksOnShortFillsWideSpreadsFewRepeatsAndAMeterThatDisagrees() {
        Container bucket = new Container(15, 0.1, 0.1, 8.0);
        FlowTestResult result = readings.workOut(test(SPRING, null, bucket, 3.0, null, List.of(7.4, 7.9)), yard.me);
        assertThat(result.remarks())
                .contains(Remark.SHORT_FILL, Remark.SPREAD_OVER_5, Remark.FEW_REPEATS, Remark.METER_DISAGREES);
        assertThat(readings.workOut(drum(SPRING, 28.0, 30.5, 30.1, 31.0), yard.me)
                        .remarks())
                .contains(Remark.SPREAD_OVER_8)
                .doesNotContain(Remark.SPREAD_OVER_5, Remark.FEW_REPEATS, Remark.SHORT_FILL);
    }

    @Test
    void bringsTheCurveToTheFrequencyOfTheTest() {
        Ratings sixty = new Ratings(null, 60.0, null, null, null, null, null, null, null, null, null, null);
        unit = yard.unit("BF-60", yard.model("Sixty", 0, sixty, Yard.FT_02)).id();
        FlowTestDraft draft = drum(SPRING, 38.0, 38.1, 37.9);
        FlowTestDraft atFifty = new FlowTestDraft(
                unit,
                SPRING,
                null,
                draft.container(),
                draft.seconds(),
                3.0,
                null,
                0.03,
                20,
                31.75,
                1,
                draft.pieces(),
                null,
                null,
                50.0,
                null);
        FlowTestResult result = readings.workOut(atFifty, yard.me);
        assertThat(result.remarks()).contains(Remark.OTHER_FREQUENCY);
        double scaled = 50 / 60.0;
        assertThat(result.capacity().referenceFlowM3h())
                .isCloseTo(
                        pumps.unit(unit)
                                .model()
                                .curve()
                                .scaled(scaled, scaled * scaled)
                                .flowAt(result.capacity().headM()),
                        within(1e-9));
    }

    @Test
    void leavesATestWithoutFiguresWhenTheCurveNoLongerHoldsIt() {
        long id = readings.recordFlowTest(drum(SPRING, 29.8, 30.5, 30.1), yard.me);
        var model = pumps.unit(unit).model();
        pumps.changeModel(
                model.id(), model.version(), exact(List.of(new CurvePoint(0, 3.5), new CurvePoint(8, 1))), yard.me);
        assertThat(readings.flowTest(id).figures()).isNull();
        assertThat(readings.capacity(unit)).isEmpty();
    }

    @Test
    void answersForManyUnitsWhatItAnswersForEach() {
        long other = yard.unit("BF-08", exact(FLAT)).id();
        long untested = yard.unit("BF-09").id();
        readings.recordFlowTest(drum(SPRING, 29.8, 30.5, 30.1), yard.me);
        readings.recordFlowTest(drum(weeks(1), 31.0, 31.5, 31.1), yard.me);
        readings.recordFlowTest(drum(weeks(2), 33.0, 33.5, 33.1), yard.me);
        long first = unit;
        unit = other;
        readings.recordFlowTest(drum(SPRING, 40.0, 40.5, 40.1), yard.me);

        assertThat(readings.capacities(Set.of(first, other, untested)))
                .hasSize(2)
                .containsEntry(first, readings.capacity(first).orElseThrow())
                .containsEntry(other, readings.capacity(other).orElseThrow());
        assertThat(readings.capacity(first).orElseThrow().tests()).isEqualTo(3);
        assertThat(readings.capacities(Set.of())).isEmpty();
    }

    @Test
    void comparesAllTestsOfAUnitWithItsFirst() {
        long first = readings.recordFlowTest(drum(SPRING, 29.8, 30.5, 30.1), yard.me);
        long taken = readings.recordFlowTest(drum(weeks(1), 50.0, 50.5, 50.1), yard.me);
        readings.recordFlowTest(drum(weeks(4), 34.0, 34.3, 33.9), yard.me);
        readings.withdrawFlowTest(taken, "valve half shut", yard.me);
        long flat = yard.unit("BF-08", exact(FLAT)).id();
        long untested = yard.unit("BF-09").id();

        Map<Long, List<ComparedTest>> compared = readings.comparedTests(Set.of(unit, flat, untested));
        assertThat(compared).containsOnlyKeys(unit);
        List<ComparedTest> tests = compared.get(unit);
        assertThat(tests).extracting(ComparedTest::at).containsExactly(SPRING, weeks(4));
        assertThat(tests.get(0).testId()).isEqualTo(first);
        assertThat(tests.get(0).fraction()).isCloseTo(1, within(1e-9));
        Capacity capacity = readings.capacity(unit).orElseThrow();
        assertThat(tests.get(1).fraction()).isCloseTo(capacity.fraction(), within(1e-12));
        // the doubt of the capacity is that of both tests in quadrature
        double ratio = tests.get(1).fraction();
        assertThat(2
                        * Math.hypot(
                                tests.get(1).standardUncertainty(),
                                ratio * tests.get(0).standardUncertainty()))
                .isCloseTo(capacity.expandedUncertainty(), within(1e-9));
    }

    @Test
    void comparesByHeadThroughoutWhereTheFirstTestIsStatedByHead() {
        unit = yard.unit("BF-09", exact(FLAT)).id();
        Container small = new Container(20, 0.1, 0.25, null);
        readings.recordFlowTest(test(SPRING, "RIG-1", small, 8.2, null, List.of(30.0, 30.2, 29.8)), yard.me);
        readings.recordFlowTest(test(weeks(3), "RIG-2", small, 1.0, null, List.of(9.5, 9.6, 9.4)), yard.me);
        List<ComparedTest> tests = readings.comparedTests(Set.of(unit)).get(unit);
        assertThat(readings.capacity(unit).orElseThrow().statedBy()).isEqualTo(StatedBy.FLOW);
        assertThat(tests).extracting(ComparedTest::statedBy).containsOnly(StatedBy.HEAD);
        assertThat(tests.get(0).fraction()).isCloseTo(1, within(1e-9));
        assertThat(tests).extracting(ComparedTest::onAnotherRig).containsExactly(false, true);
    }

    @Test
    void listsATestThatNoLongerFitsWithoutAFraction() {
        readings.recordFlowTest(drum(SPRING, 29.8, 30.5, 30.1), yard.me);
        var model = pumps.unit(unit).model();
        pumps.changeModel(
                model.id(), model.version(), exact(List.of(new CurvePoint(0, 3.5), new CurvePoint(8, 1))), yard.me);
        ComparedTest test = readings.comparedTests(Set.of(unit)).get(unit).get(0);
        assertThat(test.fraction()).isNull();
        assertThat(test.standardUncertainty()).isNull();
        assertThat(test.headM()).isGreaterThan(3);
        assertThat(readings.comparedTests(Set.of())).isEmpty();
    }

    @Test
    void answersThatThereIsNoSuchTest() {
        assertThatThrownBy(() -> readings.flowTest(999_999)).isInstanceOf(NotFound.class);
        assertThatThrownBy(() -> readings.withdrawFlowTest(999_999, "why", yard.me))
                .isInstanceOf(NotFound.class);
    }
}
