package freshet.hydraulics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import freshet.hydraulics.Drawdown.Level;
import freshet.hydraulics.Drawdown.Status;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Times of drawdown against closed forms and plain fine steps. */
class DrawdownTests {

    private static final Curve PUMP = CurveTests.curve(0, 11.2, 2, 10.3, 4, 9.1, 6, 7.5, 8, 5.6, 10, 3.3, 11.4, 1.5);
    private static final List<Level> SHAFT = List.of(new Level(0, 6), new Level(2, 8), new Level(4, 12));

    static LongStream seeds() {
        return LongStream.range(0, 60);
    }

    /** t = 2 A sqrt(a+k) (sqrt(H0-z+h1) - sqrt(H0-z+h2)) for pure squares: 6955.0467 s; quadrature agrees [computed]. */
    @Test
    void agreesWithTheClosedFormForPureSquares() {
        double openFlow = Math.sqrt(8 / 1.5e6) * 3600;
        double area = Math.PI / 4 * 0.05 * 0.05;
        double k = 1e6 * 2 * 9.80665 * area * area;
        Line line = new Line(0.8, 15, null, 0, List.of(Section.rough(50, 0, 0, k)));
        Drawdown answer = Drawdown.of(
                Curve.parabola(8, openFlow), line, List.of(new Level(0, 12), new Level(1, 12)), 1.0, 0.05, 0);
        assertThat(answer.minutes() * 60).isCloseTo(6955.0467, within(1e-4));
        assertThat(answer.volumeM3()).isCloseTo(11.4, within(1e-12));
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void agreesWithFineSteps(long seed) {
        Yard yard = new Yard(seed);
        Curve curve = yard.curve();
        Line line = yard.line(curve);
        List<Level> vessel = vessel(yard);
        double top = vessel.get(vessel.size() - 1).levelM();
        double start = yard.between(0.7, 1) * top;
        double stop = yard.between(0, 0.6) * top;
        double inflow = yard.between(0, 0.3) * curve.lastFlowM3h();
        Drawdown answer;
        try {
            answer = Drawdown.of(curve, line, vessel, start, stop, inflow);
        } catch (OutOfRange beyond) {
            assertThat(DutyPoint.of(curve, line).status()).isEqualTo(DutyPoint.Status.BEYOND_CURVE);
            return;
        }
        double atStop =
                DutyPoint.of(curve, line.withLift(line.liftM() + start - stop)).flowM3h();
        assertThat(answer.status()).isEqualTo(atStop > inflow ? Status.EMPTIES : Status.NEVER_EMPTIES);
        if (answer.status() == Status.EMPTIES && atStop > 1.05 * inflow) {
            assertThat(answer.minutes())
                    .isCloseTo(fineSteps(curve, line, vessel, start, stop, inflow), within(2e-4 * answer.minutes()));
        }
        Double settles = answer.settlesAtLevelM();
        if (settles != null && inflow > 0) {
            double flow = DutyPoint.of(curve, line.withLift(line.liftM() + start - settles))
                    .flowM3h();
            assertThat(flow).isCloseTo(inflow, within(1e-8 * curve.lastFlowM3h()));
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {1e-3, 1e-6, 1e-9, 1e-12})
    void standsANearMissOfTheInflow(double spare) {
        Line line = Line.of(4, Section.rough(25.4, 12, 0.0015, 0.8));
        double atStop = DutyPoint.of(PUMP, line.withLift(4 + 3)).flowM3h();
        Drawdown answer = Drawdown.of(PUMP, line, SHAFT, 3.5, 0.5, atStop * (1 - spare));
        assertThat(answer.status()).isEqualTo(Status.EMPTIES);
        // each factor of 1000 nearer adds A x (dh/dQ) x ln 1000 in hours
        Drawdown farther = Drawdown.of(PUMP, line, SHAFT, 3.5, 0.5, atStop * (1 - 1000 * spare));
        double metresPerFlow = (LineLoss.of(line, atStop + 1e-4).headM()
                        - LineLoss.of(line, atStop - 1e-4).headM()
                        - PUMP.headAt(atStop + 1e-4)
                        + PUMP.headAt(atStop - 1e-4))
                / 2e-4;
        if (spare <= 1e-9) {
            assertThat(answer.minutes() - farther.minutes())
                    .isCloseTo(60 * 6.5 * metresPerFlow * Math.log(1000), within(0.05 * answer.minutes()));
        }
        assertThat(answer.minutes()).isGreaterThan(farther.minutes());
    }

    @Test
    void settlesWhereFlowAndInflowBalance() {
        Line line = Line.of(4, Section.rough(25.4, 12, 0.0015, 0.8));
        double start = DutyPoint.of(PUMP, line).flowM3h();
        Drawdown falls = Drawdown.of(PUMP, line, SHAFT, 3.5, 0.2, 0.99 * start);
        assertThat(falls.status()).isEqualTo(Status.NEVER_EMPTIES);
        assertThat(falls.minutes()).isNull();
        assertThat(falls.stopFlowM3h()).isNull();
        assertThat(falls.settlesAtLevelM()).isBetween(0.2, 3.5);
        Drawdown rises = Drawdown.of(PUMP, line, SHAFT, 3.5, 0.2, 1.01 * start);
        assertThat(rises.settlesAtLevelM()).isBetween(3.5, 4.0);
        assertThat(Drawdown.of(PUMP, line, SHAFT, 3.5, 0.2, 2 * start).settlesAtLevelM())
                .isNull();
        assertThat(Drawdown.of(PUMP, line, SHAFT, 3.5, 0.2, 90_000).settlesAtLevelM())
                .isNull();
    }

    @Test
    void stopsAtTheShutOffHeadWhenNothingRunsIn() {
        Drawdown answer = Drawdown.of(PUMP, Line.of(10, Section.rough(25.4, 12, 0.0015, 0.8)), SHAFT, 3.5, 0.2, 0);
        assertThat(answer.status()).isEqualTo(Status.NEVER_EMPTIES);
        assertThat(answer.settlesAtLevelM()).isCloseTo(3.5 + 10 - 11.2, within(1e-12));
        assertThat(Drawdown.of(PUMP, Line.of(12), SHAFT, 3.5, 0.2, 0).settlesAtLevelM())
                .isEqualTo(3.5);
    }

    @Test
    void timesASmallFallByTheFlowThere() {
        Line line = Line.of(4, Section.rough(25.4, 12, 0.0015, 0.8));
        Drawdown answer = Drawdown.of(PUMP, line, SHAFT, 2, 2 - 1e-6, 0);
        assertThat(answer.minutes()).isCloseTo(60 * 8e-6 / answer.startFlowM3h(), within(1e-6 * answer.minutes()));
    }

    @Test
    void refusesAVesselOrALevelThatCannotBe() {
        Line line = Line.of(4, Section.rough(25.4, 12, 0.0015, 0.8));
        assertThatThrownBy(() -> Drawdown.of(PUMP, line, SHAFT, 4.1, 0, 0)).hasMessageContaining("4.1 m");
        assertThatThrownBy(() -> Drawdown.of(PUMP, line, SHAFT, 3, 3, 0)).hasMessageContaining("stopLevelM");
        assertThatThrownBy(() -> Drawdown.of(PUMP, line, List.of(new Level(1, 1), new Level(1, 2)), 1, 0, 0))
                .isInstanceOfSatisfying(
                        OutOfRange.class, e -> assertThat(e.field()).isEqualTo("vessel[1].levelM"));
        assertThatThrownBy(() -> Drawdown.of(PUMP, line, List.of(new Level(0, 0), new Level(1, 0)), 1, 0, 0))
                .hasMessageContaining("areaM2");
        assertThatThrownBy(() -> Drawdown.of(PUMP, Line.of(-1), SHAFT, 3, 1, 0)).hasMessageContaining("11.4 m³/h");
    }

    private static List<Level> vessel(Yard yard) {
        List<Level> rows = new ArrayList<>();
        double level = 0;
        for (int i = 0; i < yard.count(2, 6); i++) {
            rows.add(new Level(level, yard.around(0.1, 20)));
            level += yard.between(0.2, 1.5);
        }
        return rows;
    }

    private static double fineSteps(
            Curve curve, Line line, List<Level> vessel, double start, double stop, double inflow) {
        int n = 3000;
        double hours = 0;
        double step = (start - stop) / n;
        for (int i = 0; i < n; i++) {
            double level = stop + (i + 0.5) * step;
            double flow = DutyPoint.of(curve, line.withLift(line.liftM() + start - level))
                    .flowM3h();
            hours += area(vessel, level) * step / (flow - inflow);
        }
        return 60 * hours;
    }

    private static double area(List<Level> vessel, double level) {
        int i = 0;
        while (vessel.get(i + 1).levelM() < level) {
            i++;
        }
        Level low = vessel.get(i);
        Level high = vessel.get(i + 1);
        double share = (level - low.levelM()) / (high.levelM() - low.levelM());
        return low.areaM2() + share * (high.areaM2() - low.areaM2());
    }
}
