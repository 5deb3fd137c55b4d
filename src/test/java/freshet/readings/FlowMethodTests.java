package freshet.readings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import freshet.FreshetTest;
import freshet.TestClock;
import freshet.hydraulics.FlowTestReduction;
import freshet.hydraulics.MeasuredFlow;
import freshet.hydraulics.MeasuredFlow.Assumption;
import freshet.hydraulics.MeasuredHead;
import freshet.measures.UnitSystem;
import freshet.people.People;
import freshet.people.Refused;
import freshet.people.Refused.Wrong;
import freshet.places.Places;
import freshet.pumps.Pumps;
import freshet.pumps.Ratings;
import freshet.readings.FlowBy.Jet;
import freshet.readings.FlowBy.LineMeter;
import freshet.readings.FlowBy.PitFall;
import freshet.readings.FlowTestDraft.Container;
import freshet.readings.FlowTestDraft.Gauge;
import freshet.readings.FlowTestResult.Remark;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;

@FreshetTest
class FlowMethodTests {

    private static final Instant SPRING = Instant.parse("2026-03-14T12:00:00Z");
    private static final Instant LATER = Instant.parse("2026-03-21T12:00:00Z");
    private static final Gauge GAUGE = new Gauge(60, 1, 0.4, 38.1);
    /** 600 mm across, 0.3 m in a minute, and a little running in, before and after. */
    private static final PitFall PIT = new PitFall(600.0, null, 0.02, 0.05, 300, 60, 30.0, 60.0, 36.0, 60.0, 3, 0.25);

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

    Yard yard;
    long unit;

    @BeforeEach
    void openTheYard() {
        clock.set("2026-06-01T12:00:00Z");
        yard = new Yard(people, places, pumps, UnitSystem.SI);
        unit = yard.unit("BF-07", yard.model("Exact", 0, Ratings.NONE, Yard.FT_02))
                .id();
    }

    private FlowTestDraft drum(Instant at) {
        return new FlowTestDraft(
                unit,
                at,
                "RIG-1",
                new Container(60, 0.5, 0.2, null),
                List.of(36.0, 36.2, 35.8),
                null,
                GAUGE,
                0.03,
                20,
                null,
                1,
                List.of(),
                null,
                null,
                null,
                null);
    }

    private FlowTestDraft by(FlowBy way) {
        return drum(SPRING).measuredBy(way, null);
    }

    private FlowTestResult kept(FlowTestDraft draft) {
        return readings.flowTest(readings.recordFlowTest(draft, yard.me));
    }

    private @Nullable Wrong refusal(FlowBy way) {
        Refused refused = catchThrowableOfType(Refused.class, () -> readings.recordFlowTest(by(way), yard.me));
        return refused == null ? null : refused.wrongs().get(0);
    }

    /** What the stone makes of it when it is asked directly. */
    private void holdsAgainstTheStone(FlowTestResult test, MeasuredFlow flow) {
        FlowTestReduction direct = FlowTestReduction.of(
                pumps.unit(unit).model().curve(), flow, new MeasuredHead.ByGauge(60, 0.4, 38.1, 1, 20, 0.03), 0);
        assertThat(test.figures().measured()).isEqualTo(flow);
        assertThat(test.figures().rated()).isEqualTo(direct);
        assertThat(test.capacity().flowM3h()).isEqualTo(flow.flowM3h());
    }

    @Test
    void keepsAMeterInTheLineAsItWasRead() {
        FlowTestDraft draft = by(new LineMeter(6.2, 0.015, 0.05));
        FlowTestResult test = kept(draft);
        assertThat(test.facts()).isEqualTo(draft);
        holdsAgainstTheStone(test, MeasuredFlow.meter(6.2, 0.015, 0.05));
        // √((6.2 × 0.015)² + 0.05²), GUM 5.1.2
        assertThat(test.figures().measured().standardUncertaintyM3h()).isCloseTo(0.105589, within(1e-6));
        assertThat(test.figures().meanSeconds()).isNull();
        assertThat(test.figures().spread()).isNull();
        assertThat(test.remarks())
                .doesNotContain(Remark.FEW_REPEATS, Remark.SHORT_FILL, Remark.SHORT_FALL, Remark.METER_DISAGREES);
    }

    @Test
    void addsWhatRanInToTheFallOfThePit() {
        FlowTestDraft draft = by(PIT);
        FlowTestResult test = kept(draft);
        assertThat(test.facts()).isEqualTo(draft);
        // 3600 × π/4 × 0.6² × 0.95 × (0.3/60 + (0.03/60 + 0.036/60)/2), and GUM 5.1.2 by hand
        assertThat(test.figures().flowM3h()).isCloseTo(5.3667513, within(1e-6));
        assertThat(test.figures().measured().standardUncertaintyM3h()).isCloseTo(0.1376301, within(1e-6));
        assertThat(test.figures().measured().assumptions()).contains(Assumption.SAME_INFLOW);
        holdsAgainstTheStone(test, test.facts().by().flow());
    }

    @Test
    void saysWhenNoInflowWasTimedAndWhenTheFallWasShort() {
        PitFall dry = new PitFall(null, 0.3, 0.02, 0, 45, 9, null, null, null, null, 3, 0.25);
        FlowTestDraft draft = by(dry);
        FlowTestResult test = kept(draft);
        assertThat(test.facts()).isEqualTo(draft);
        assertThat(test.figures().flowM3h()).isCloseTo(3600 * 0.3 * 0.045 / 9, within(1e-9));
        assertThat(test.figures().measured().assumptions()).contains(Assumption.NO_INFLOW);
        assertThat(test.remarks()).contains(Remark.SHORT_FALL).doesNotContain(Remark.SHORT_FILL);
    }

    @Test
    void measuresTheJetFromALevelPipe() {
        FlowTestDraft draft = by(new Jet(50.8, 360, 300, 10, 0.05));
        FlowTestResult test = kept(draft);
        assertThat(test.facts()).isEqualTo(draft);
        // 3600 × π/4 × 0.0508² × 0.36 × √(9.80665/(2 × 0.3)), free fall
        assertThat(test.figures().flowM3h()).isCloseTo(10.619572, within(1e-5));
        holdsAgainstTheStone(test, MeasuredFlow.trajectory(50.8, 0.36, 0.3, 0.01, 0.05));
        assertThat(test.figures().measured().assumptions()).contains(Assumption.LEVEL_FULL_PIPE);
    }

    @Test
    void takesAnotherWayToMeasureTheFlowForAnotherRig() {
        readings.recordFlowTest(drum(SPRING), yard.me);
        FlowTestResult later = kept(drum(LATER).measuredBy(new LineMeter(5.5, 0.015, 0), null));
        assertThat(later.remarks()).contains(Remark.OTHER_RIG);
        assertThat(later.capacity().reference()).isEqualTo(Capacity.Reference.OWN_FIRST_TEST);
        assertThat(readings.plot(unit).points()).hasSize(2);
        assertThat(readings.comparedTests(Set.of(unit)).get(unit))
                .extracting(ComparedTest::flowM3h)
                .containsExactly(6.0, 5.5);
    }

    @Test
    void refusesEachImpossibleNumberAtItsField() {
        assertThat(refusal(new LineMeter(-1, 0.015, 0)).field()).isEqualTo("by.meter");
        assertThat(refusal(new LineMeter(6, 1.5, 0)).field()).isEqualTo("by.meterPercent");
        assertThat(refusal(new LineMeter(6, 0.01, 7)).field()).isEqualTo("by.meterFixed");
        assertThat(refusal(new Jet(0, 300, 300, 10, 0.05)).field()).isEqualTo("by.jetBore");
        assertThat(refusal(new Jet(50, 300, -300, 10, 0.05)).field()).isEqualTo("by.jetFall");
        assertThat(refusal(pit(-600.0, 0.05, 300, 60, 30.0, 60.0)).field()).isEqualTo("by.pitDiameter");
        assertThat(refusal(pit(600.0, 0.95, 300, 60, 30.0, 60.0)).field()).isEqualTo("by.displaced");
        assertThat(refusal(pit(600.0, 0.05, 0, 60, 30.0, 60.0)).field()).isEqualTo("by.fall");
        assertThat(refusal(pit(600.0, 0.05, 300, 60, 30.0, 0.0)).field()).isEqualTo("by.riseAfterSeconds");
        assertThat(refusal(PIT)).isNull();
    }

    private static PitFall pit(
            double diameterMm, double displaced, double fallMm, double seconds, double roseMm, double roseFor) {
        return new PitFall(diameterMm, null, 0.02, displaced, fallMm, seconds, null, null, roseMm, roseFor, 3, 0.25);
    }

    @Test
    void asksAboutAFlowThatNoSuchPumpGives() {
        Wrong meter = refusal(new LineMeter(100, 0.015, 0));
        assertThat(meter.field()).isEqualTo("by.meter");
        assertThat(meter.code()).isEqualTo("readings.meter.tooMuch.unit");
        assertThat(meter.arguments()).contains("L/min");
        assertThat(refusal(new Jet(300, 500, 300, 10, 0.05)).code()).isEqualTo("readings.by.tooMuch");
        assertThat(refusal(pit(3000, 0, 300, 60, 0, 60)).field()).isEqualTo("by.fall");
    }

    @Test
    void measuresAFlowOneWayOnly() {
        FlowTestDraft drum = drum(SPRING);
        assertThatThrownBy(() -> drum.measuredBy(null, null)).isInstanceOf(IllegalArgumentException.class);
    }
}
