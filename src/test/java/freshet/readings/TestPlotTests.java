package freshet.readings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import freshet.FreshetTest;
import freshet.hydraulics.HoseKind;
import freshet.hydraulics.WornCurve.Identified;
import freshet.measures.UnitSystem;
import freshet.people.People;
import freshet.people.Refused;
import freshet.places.Places;
import freshet.pumps.Pumps;
import freshet.readings.FlowTestDraft.Container;
import freshet.readings.FlowTestDraft.Piece;
import freshet.readings.FlowTestDraft.ShutOff;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;

/** The drum test is FT-02 of the hydraulics cases: 7.168 m³/h at 4.155 m; the rated curve gives 9.290 m³/h there, and 11.2 m shut off. */
@FreshetTest
class TestPlotTests {

    private static final Instant SPRING = Instant.parse("2026-03-12T15:00:00Z");
    /** At 20 °C a metre of water is 9.7891 kPa (998.207 kg/m³, 9.80665 m/s²). */
    private static final double KPA_PER_M = 9.7891;

    @Autowired
    Readings readings;

    @Autowired
    People people;

    @Autowired
    Places places;

    @Autowired
    Pumps pumps;

    private Yard yard;
    private long unit;

    @BeforeEach
    void standInTheYard() {
        yard = new Yard(people, places, pumps, UnitSystem.SI);
        unit = yard.unit("BF-07").id();
    }

    private void test(Instant at, double seconds, @Nullable ShutOff shutOff) {
        readings.recordFlowTest(draft(at, seconds, shutOff), yard.me);
    }

    private FlowTestDraft draft(Instant at, double seconds, @Nullable ShutOff shutOff) {
        return new FlowTestDraft(
                unit,
                at,
                "R-1",
                new Container(60, 0.5, 0.2, null),
                List.of(seconds - 0.3, seconds + 0.4, seconds),
                3.0,
                null,
                0.03,
                20,
                31.75,
                1,
                List.of(new Piece(HoseKind.RUBBER_LINED_HOSE.name(), 38.1, 10, 0.01, null, 0.8)),
                null,
                null,
                null,
                null,
                shutOff);
    }

    private static ShutOff shutOff(double headM) {
        return new ShutOff((headM - 0.5) * KPA_PER_M, 1, 0.5);
    }

    @Test
    void tellsTheFlowAloneFromOneDutyPoint() {
        test(SPRING, 30.1, null);
        TestPlot plot = readings.plot(unit);
        assertThat(plot.points()).singleElement().satisfies(point -> {
            assertThat(point.flowM3h()).isCloseTo(7.17, within(0.01));
            assertThat(point.headM()).isCloseTo(4.15, within(0.01));
            assertThat(point.flowUncertaintyM3h()).isPositive();
        });
        assertThat(plot.line().identified()).isEqualTo(Identified.FLOW_FACTOR);
        assertThat(plot.line().curve().shutOffHeadM()).isCloseTo(11.2, within(1e-9));
        assertThat(plot.line().curve().flowAt(4.1545)).isCloseTo(7.17, within(0.01));
    }

    @Test
    void tellsHeadAndFlowApartWithTheValveShut() {
        test(SPRING, 30.1, shutOff(10.08));
        TestPlot plot = readings.plot(unit);
        assertThat(plot.points()).hasSize(2).last().satisfies(point -> {
            assertThat(point.flowM3h()).isZero();
            assertThat(point.headM()).isCloseTo(10.08, within(0.002));
            // k = 2 of 1 kPa and of 30 mm
            assertThat(point.headUncertaintyM()).isCloseTo(2 * Math.hypot(1 / KPA_PER_M, 0.03), within(1e-4));
        });
        assertThat(plot.line().identified()).isEqualTo(Identified.BOTH);
        assertThat(plot.line().curve().shutOffHeadM()).isCloseTo(10.08, within(0.01));
        assertThat(plot.line().curve().flowAt(4.1545)).isCloseTo(7.17, within(0.02));
        assertThat(plot.line().lower().headAt(5)).isLessThan(plot.line().curve().headAt(5));
        assertThat(plot.line().upper().headAt(5))
                .isGreaterThan(plot.line().curve().headAt(5));
    }

    @Test
    void letsOldTestsBeDrawnButNotBendTheLine() {
        test(SPRING.minus(Duration.ofDays(400)), 24, null);
        test(SPRING, 30.1, null);
        TestPlot plot = readings.plot(unit);
        assertThat(plot.points()).hasSize(2);
        assertThat(plot.line().curve().flowAt(4.1545)).isCloseTo(7.17, within(0.01));
    }

    @Test
    void refusesAShutOffHeadThatCannotBe() {
        assertThatThrownBy(() -> test(SPRING, 30.1, shutOff(14)))
                .isInstanceOfSatisfying(
                        Refused.class,
                        refused -> assertThat(refused.wrongs())
                                .singleElement()
                                .satisfies(wrong -> assertThat(wrong.code()).isEqualTo("readings.shutOff.tooHigh")));
        assertThatThrownBy(() -> test(SPRING, 30.1, shutOff(3)))
                .isInstanceOfSatisfying(
                        Refused.class,
                        refused -> assertThat(refused.wrongs())
                                .singleElement()
                                .satisfies(wrong -> assertThat(wrong.code()).isEqualTo("readings.shutOff.tooLow")));
    }

    @Test
    void keepsWhatTheGaugeShowed() {
        FlowTestDraft draft = draft(SPRING, 30.1, shutOff(10.08));
        long id = readings.recordFlowTest(draft, yard.me);
        assertThat(readings.flowTest(id).facts()).isEqualTo(draft);
    }
}
