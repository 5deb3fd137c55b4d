package freshet.hydraulics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import freshet.hydraulics.DutyPoint.Status;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What must hold for any pump on any line. */
class DutyPointTests {

    private static final Curve SMALL = Curve.of(List.of(
            new Curve.Point(0, 11.2),
            new Curve.Point(2, 10.3),
            new Curve.Point(4, 9.1),
            new Curve.Point(6, 7.5),
            new Curve.Point(8, 5.6),
            new Curve.Point(10, 3.3),
            new Curve.Point(11.4, 1.5)));

    static LongStream seeds() {
        return LongStream.range(0, 400);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void liesOnTheCurveAndOnTheLine(long seed) {
        Yard yard = new Yard(seed);
        Curve curve = yard.curve();
        Line line = yard.line(curve);
        DutyPoint duty = DutyPoint.of(curve, line);
        if (duty.status() == Status.OK) {
            double scale = curve.shutOffHeadM() + Math.abs(line.liftM());
            assertThat(duty.headM()).isCloseTo(curve.headAt(duty.flowM3h()), within(1e-11 * scale));
            assertThat(duty.headM()).isCloseTo(LineLoss.of(line, duty.flowM3h()).headM(), within(1e-12 * scale));
        } else if (duty.status() == Status.CANNOT_LIFT) {
            assertThat(line.liftM()).isGreaterThanOrEqualTo(curve.shutOffHeadM());
            assertThat(duty.flowM3h()).isZero();
        } else {
            assertThat(LineLoss.of(line, curve.lastFlowM3h()).headM()).isLessThan(curve.lastHeadM());
            assertThat(duty.flowM3h()).isNull();
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void sumsItsPartsToItsHead(long seed) {
        Yard yard = new Yard(seed);
        Curve curve = yard.curve();
        Line line = yard.line(curve);
        DutyPoint duty = DutyPoint.of(curve, line);
        if (duty.status() == Status.OK) {
            double parts = duty.liftM() + duty.frictionM() + duty.fittingsM() + duty.exitM();
            assertThat(parts).isCloseTo(duty.headM(), within(1e-10 * Math.abs(duty.headM()) + 1e-12));
            double sections = duty.sections().stream()
                    .mapToDouble(LineLoss.SectionFlow::lossM)
                    .sum();
            assertThat(sections).isCloseTo(duty.frictionM() + duty.fittingsM(), within(1e-10 * curve.shutOffHeadM()));
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void fallsWithLiftAndLengthAndRisesWithBore(long seed) {
        Yard yard = new Yard(seed);
        Curve curve = yard.curve();
        Line line = yard.line(curve);
        double flow = flow(curve, line);
        assertThat(flow(curve, line.withLift(line.liftM() + 0.3))).isLessThanOrEqualTo(flow);
        assertThat(flow(curve, changed(line, 1, 1.1))).isLessThanOrEqualTo(flow * (1 + 1e-12));
        assertThat(flow(curve, changed(line, 1.05, 1))).isGreaterThanOrEqualTo(flow * (1 - 1e-12));
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void isTheSameAsPlainHalvingFindsIt(long seed) {
        Yard yard = new Yard(seed);
        Curve curve = yard.curve();
        Line line = yard.line(curve);
        DutyPoint duty = DutyPoint.of(curve, line);
        if (duty.status() != Status.OK) {
            return;
        }
        double low = 0;
        double high = curve.lastFlowM3h();
        for (int i = 0; i < 100; i++) {
            double middle = (low + high) / 2;
            if (curve.headAt(middle) > LineLoss.of(line, middle).headM()) {
                low = middle;
            } else {
                high = middle;
            }
        }
        assertThat(duty.flowM3h()).isCloseTo(low, within(1e-9 * curve.lastFlowM3h()));
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void goesTogetherWithTheSpeedWhenThereIsOnlySquareLoss(long seed) {
        Yard yard = new Yard(seed);
        Curve curve = yard.curve();
        double bore = 10 * Math.sqrt(curve.lastFlowM3h());
        Line line = Line.of(0, Section.rough(bore, 0, 0, yard.between(1, 400)));
        DutyPoint duty = DutyPoint.of(curve, line);
        Affinity faster = new Affinity(yard.between(0.5, 1.5));
        DutyPoint there = DutyPoint.of(faster.curve(curve), line);
        assertThat(there.status()).isEqualTo(duty.status());
        if (duty.status() == Status.OK) {
            assertThat(there.flowM3h()).isCloseTo(faster.flow(duty.flowM3h()), within(1e-10 * there.flowM3h()));
            assertThat(there.headM()).isCloseTo(faster.head(duty.headM()), within(1e-9 * there.headM()));
        }
    }

    @Test
    void takesTheOutletsVelocityWhenThereIsNoSection() {
        Line bare = new Line(3, 15, 31.75, 1, List.of());
        LineLoss loss = LineLoss.of(bare, 6);
        double velocity = 6 / 3600.0 / (Math.PI / 4 * 0.03175 * 0.03175);
        assertThat(loss.exitM()).isCloseTo(velocity * velocity / 2 / 9.80665, within(1e-12));
        assertThat(DutyPoint.of(SMALL, bare).status()).isEqualTo(Status.OK);
    }

    @Test
    void readsTheCurveAtTheLiftWhenThereIsNothingElse() {
        DutyPoint duty = DutyPoint.of(SMALL, new Line(5.6, 15, null, 1, List.of()));
        assertThat(duty.flowM3h()).isCloseTo(8, within(1e-12));
        assertThat(duty.exitM()).isZero();
    }

    @Test
    void reachesTheLastPointButNotBeyondIt() {
        assertThat(DutyPoint.of(SMALL, new Line(1.5, 15, null, 1, List.of())).flowM3h())
                .isEqualTo(11.4);
        assertThat(DutyPoint.of(SMALL, new Line(1.49, 15, null, 1, List.of())).status())
                .isEqualTo(Status.BEYOND_CURVE);
    }

    @Test
    void cannotLiftAtTheShutOffHeadItself() {
        assertThat(DutyPoint.of(SMALL, Line.of(11.2)).status()).isEqualTo(Status.CANNOT_LIFT);
        assertThat(DutyPoint.of(SMALL, Line.of(Math.nextDown(11.2), Section.rough(20, 10, 0.01, 1)))
                        .status())
                .isEqualTo(Status.OK);
    }

    @Test
    void answersLaminarLines() {
        DutyPoint duty = DutyPoint.of(SMALL, Line.of(2, Section.rough(3, 30, 0.0015, 0)));
        LineLoss.SectionFlow section = duty.sections().get(0);
        assertThat(section.reynolds()).isLessThan(2000);
        assertThat(section.frictionFactor()).isCloseTo(64 / section.reynolds(), within(1e-15));
    }

    @Test
    void drawsASiphonOverTheEnd() {
        DutyPoint duty = DutyPoint.of(SMALL, Line.of(-3, Section.rough(19.05, 60, 0.0015, 2)));
        assertThat(duty.status()).isEqualTo(Status.OK);
        assertThat(duty.headM()).isEqualTo(curveHead(duty), within(1e-10));
    }

    private static double curveHead(DutyPoint duty) {
        return SMALL.headAt(duty.flowM3h());
    }

    private static double flow(Curve curve, Line line) {
        Double flow = DutyPoint.of(curve, line).flowM3h();
        return flow == null ? Double.MAX_VALUE : flow;
    }

    private static Line changed(Line line, double bore, double length) {
        List<Section> sections = new ArrayList<>();
        for (Section s : line.sections()) {
            sections.add(new Section(
                    s.innerDiameterMm() * bore,
                    s.lengthM() * length,
                    s.roughnessMm(),
                    s.hazenWilliamsC(),
                    s.lossCoefficient()));
        }
        Double outlet = line.pumpOutletMm();
        return new Line(
                line.liftM(),
                line.waterTemperatureC(),
                outlet == null ? null : Double.valueOf(outlet * bore),
                line.exitLossCoefficient(),
                sections);
    }
}
