package freshet.hydraulics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import freshet.hydraulics.WornCurve.Identified;
import freshet.hydraulics.WornCurve.TestPoint;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Worn curves from as many tests as there are, and what they leave for a job. */
class WornCurveTests {

    private static final Curve NEW = CurveTests.curve(0, 11.2, 2, 10.3, 4, 9.1, 6, 7.5, 8, 5.6, 10, 3.3, 11.4, 1.5);

    static LongStream seeds() {
        return LongStream.range(0, 100);
    }

    @Test
    void tellsTheFlowFactorFromOneDutyPoint() {
        MeasuredFlow flow = MeasuredFlow.timedContainer(60, 0.5, List.of(29.8, 30.5, 30.1), 0.2);
        MeasuredHead head =
                new MeasuredHead.ByLine(new Line(3, 20, 31.75, 1, List.of(Section.rough(38.1, 10, 0.01, 0.8))), 0.03);
        FlowTestReduction test = FlowTestReduction.of(NEW, flow, head, 0.02);
        WornCurve worn = WornCurve.of(NEW, List.of(TestPoint.of(flow, head)), 0.02);
        assertThat(worn.identified()).isEqualTo(Identified.FLOW_FACTOR);
        assertThat(worn.flowFactor()).isCloseTo(test.remainingFraction(), within(1e-12));
        assertThat(2 * worn.flowFactorUncertainty()).isCloseTo(test.expandedUncertainty(), within(1e-12));
        assertThat(worn.headFactor()).isEqualTo(1);
        assertThat(worn.headFactorUncertainty()).isNull();
        assertThat(worn.curve().headAt(test.flowM3h())).isCloseTo(test.totalHeadM(), within(1e-10));
    }

    @Test
    void tellsTheHeadFactorFromAShutOffHeadAlone() {
        WornCurve worn = WornCurve.of(NEW, List.of(TestPoint.shutOff(10.08, 0.1)), 0);
        assertThat(worn.identified()).isEqualTo(Identified.HEAD_FACTOR);
        assertThat(worn.headFactor()).isCloseTo(0.9, within(1e-13));
        assertThat(worn.headFactorUncertainty()).isCloseTo(0.1 / 11.2, within(1e-13));
        assertThat(worn.flowFactor()).isEqualTo(1);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void findsBothFactorsAgain(long seed) {
        Yard yard = new Yard(seed);
        Curve reference = yard.curve();
        double a = yard.between(0.6, 1.05);
        double b = yard.between(0.7, 1.05);
        Curve worn = reference.scaled(a, b);
        double flow = yard.between(0.4, 0.8) * worn.lastFlowM3h();
        WornCurve found = WornCurve.of(
                reference,
                List.of(
                        TestPoint.shutOff(worn.shutOffHeadM(), 0.05),
                        new TestPoint(flow, worn.headAt(flow), 0.02 * flow, 0.05, 0)),
                0);
        if (found.identified() == Identified.BOTH) {
            assertThat(found.headFactor()).isCloseTo(b, within(1e-9));
            assertThat(found.flowFactor()).isCloseTo(a, within(1e-6));
        }
        assertThat(found.residualsM()).allSatisfy(r -> assertThat(r).isCloseTo(0, within(1e-6)));
    }

    @Test
    void averagesManyTestsAndKnowsHowWell() {
        int within2 = 0;
        int rounds = 400;
        for (int round = 0; round < rounds; round++) {
            Yard yard = new Yard(round);
            Curve worn = NEW.scaled(0.85, 0.92);
            List<TestPoint> tests = new ArrayList<>();
            tests.add(TestPoint.shutOff(worn.shutOffHeadM() + 0.08 * yard.gauss(), 0.08));
            for (double flow : new double[] {3, 4.5, 6, 7.5, 9}) {
                double measured = flow * (1 + 0.02 * yard.gauss());
                tests.add(new TestPoint(measured, worn.headAt(flow) + 0.08 * yard.gauss(), 0.02 * flow, 0.08, 0));
            }
            WornCurve found = WornCurve.of(NEW, tests, 0);
            assertThat(found.identified()).isEqualTo(Identified.BOTH);
            assertThat(found.flowFactor()).isCloseTo(0.85, within(0.07));
            assertThat(found.headFactor()).isCloseTo(0.92, within(0.04));
            within2 += Math.abs(found.flowFactor() - 0.85) <= 2 * found.flowFactorUncertainty() ? 1 : 0;
        }
        assertThat(within2 / (double) rounds).isBetween(0.92, 0.99);
    }

    @Test
    void doesNotTellTwoFactorsFromTwoTestsAlike() {
        WornCurve worn = WornCurve.of(
                NEW, List.of(new TestPoint(6, 6.5, 0.1, 0.05, 0), new TestPoint(6.01, 6.51, 0.1, 0.05, 0)), 0);
        assertThat(worn.identified()).isEqualTo(Identified.FLOW_FACTOR);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void neverGivesMoreThanNewWhenWorn(long seed) {
        Yard yard = new Yard(seed);
        Curve reference = yard.curve();
        Curve worn = reference.scaled(yard.between(0.5, 1), yard.between(0.5, 1));
        for (int i = 0; i <= 100; i++) {
            double flow = worn.lastFlowM3h() * i / 100;
            assertThat(worn.headAt(flow))
                    .isLessThanOrEqualTo(reference.headAt(flow) + 1e-12 * reference.shutOffHeadM());
        }
        Line line = yard.line(reference);
        Double before = DutyPoint.of(reference, line).flowM3h();
        Double after = DutyPoint.of(worn, line).flowM3h();
        if (before != null && after != null) {
            assertThat(after).isLessThanOrEqualTo(before * (1 + 1e-12));
        }
    }

    /** H = 25 ft (1 - (Q/42 gpm)²) with its head worn by 15 %, no hose: closed form [computed], printed to the whole per cent. */
    @ParameterizedTest
    @CsvSource({"10, 0.94", "15, 0.86", "18, 0.74", "20, 0.54"})
    void leavesLessForAHigherJob(double liftFt, double left) {
        Curve pump = Curve.parabola(25 * 0.3048, 42 * 0.22712470704);
        WornCurve worn = WornCurve.of(pump, List.of(TestPoint.shutOff(0.85 * 25 * 0.3048, 0.05)), 0);
        WornCurve.Capacity capacity = worn.on(Line.of(liftFt * 0.3048));
        assertThat(capacity.fraction()).isCloseTo(left, within(0.005));
        double b = 0.85;
        double q = Math.sqrt(1 - liftFt / 25 / b);
        double byHead = liftFt / 25 / (2 * b * b * q) / Math.sqrt(1 - liftFt / 25);
        double u = 0.05 / (25 * 0.3048);
        assertThat(capacity.expandedUncertainty()).isCloseTo(2 * byHead * u, within(1e-9));
    }

    @Test
    void hasNoFractionWhereOneOfTheTwoHasNoFlow() {
        WornCurve worn = WornCurve.of(NEW, List.of(TestPoint.shutOff(9, 0.1)), 0);
        WornCurve.Capacity high = worn.on(Line.of(10));
        assertThat(high.worn().status()).isEqualTo(DutyPoint.Status.CANNOT_LIFT);
        assertThat(high.fraction()).isZero();
        assertThat(high.expandedUncertainty()).isNull();
        assertThat(worn.on(Line.of(12)).fraction()).isNull();
        assertThat(worn.on(Line.of(0)).fraction()).isNull();
    }

    @Test
    void refusesTestsThatNoScaledCurveHolds() {
        assertThatThrownBy(() -> WornCurve.of(NEW, List.of(new TestPoint(5, 11.3, 0, 0, 0)), 0))
                .isInstanceOfSatisfying(
                        OutOfRange.class, e -> assertThat(e.field()).isEqualTo("tests[0].headM"));
        assertThatThrownBy(() -> WornCurve.of(NEW, List.of(new TestPoint(5, 1.4, 0, 0, 0)), 0))
                .isInstanceOf(OutOfRange.class);
        assertThatThrownBy(() -> WornCurve.of(NEW, List.of(), 0)).hasMessageContaining("0 points");
        assertThatThrownBy(() -> WornCurve.of(NEW, List.of(new TestPoint(5, Double.NaN, 0, 0, 0)), 0))
                .hasMessageContaining("headM");
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void answersOrRefusesAnySetOfTests(long seed) {
        Yard yard = new Yard(seed);
        Curve reference = yard.curve();
        for (int round = 0; round < 30; round++) {
            List<TestPoint> tests = new ArrayList<>();
            for (int i = 0; i < yard.count(1, 6); i++) {
                tests.add(new TestPoint(
                        yard.count(0, 3) == 0 ? 0 : yard.around(0.001, 3) * reference.lastFlowM3h(),
                        yard.around(0.01, 2) * reference.shutOffHeadM(),
                        yard.count(0, 2) == 0 ? 0 : 0.1,
                        yard.count(0, 2) == 0 ? 0 : 0.1,
                        yard.between(-1, 3)));
            }
            try {
                WornCurve worn = WornCurve.of(reference, tests, 0.05);
                assertThat(worn.flowFactor()).isFinite().isPositive();
                assertThat(worn.headFactor()).isFinite().isPositive();
                assertThat(worn.covariance()).isFinite();
                if (worn.flowFactorUncertainty() != null) {
                    assertThat(worn.flowFactorUncertainty()).isFinite();
                }
                if (worn.headFactorUncertainty() != null) {
                    assertThat(worn.headFactorUncertainty()).isFinite();
                }
            } catch (OutOfRange refused) {
                assertThat(refused.getMessage()).isNotBlank();
            }
        }
    }
}
