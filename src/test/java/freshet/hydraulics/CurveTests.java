package freshet.hydraulics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.LongStream;
import org.hipparchus.analysis.interpolation.SplineInterpolator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** A pump curve falls, passes its points, is inverted exactly, and refuses humps saying where. */
class CurveTests {

    static LongStream seeds() {
        return LongStream.range(0, 200);
    }

    static Curve curve(double... flowsAndHeads) {
        Curve.Point[] points = new Curve.Point[flowsAndHeads.length / 2];
        for (int i = 0; i < points.length; i++) {
            points[i] = new Curve.Point(flowsAndHeads[2 * i], flowsAndHeads[2 * i + 1]);
        }
        return Curve.of(List.of(points));
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void passesItsPointsAndNeverRises(long seed) {
        Curve curve = new Yard(seed).curve();
        for (Curve.Point p : curve.points()) {
            assertThat(curve.headAt(p.flowM3h())).isCloseTo(p.headM(), within(1e-12 * curve.shutOffHeadM()));
        }
        double before = Double.POSITIVE_INFINITY;
        for (int i = 0; i <= 2000; i++) {
            double head = curve.headAt(curve.lastFlowM3h() * i / 2000);
            assertThat(head).isLessThanOrEqualTo(before + 1e-12 * curve.shutOffHeadM());
            before = head;
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void findsTheFlowOfEveryHead(long seed) {
        Curve curve = new Yard(seed).curve();
        for (int i = 0; i <= 50; i++) {
            double head = curve.lastHeadM() + (curve.shutOffHeadM() - curve.lastHeadM()) * i / 50;
            double flow = curve.flowAt(head);
            assertThat(curve.headAt(flow)).isCloseTo(head, within(1e-11 * curve.shutOffHeadM()));
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void comesBackFromAnotherSpeed(long seed) {
        Yard yard = new Yard(seed);
        Curve curve = yard.curve();
        Affinity affinity = new Affinity(yard.between(0.3, 3));
        Curve back = affinity.inverse().curve(affinity.curve(curve));
        for (int i = 0; i < back.points().size(); i++) {
            Curve.Point there = back.points().get(i);
            Curve.Point here = curve.points().get(i);
            assertThat(there.flowM3h()).isCloseTo(here.flowM3h(), within(1e-14 * curve.lastFlowM3h()));
            assertThat(there.headM()).isCloseTo(here.headM(), within(1e-14 * curve.shutOffHeadM()));
        }
    }

    /** scipy 1.17.1 PchipInterpolator on these points; [computed], and by hand: the slope at 4 is -0.6857142857. */
    @Test
    void takesTheHarmonicMeanOfTheSlopes() {
        Curve curve = curve(0, 11.2, 2, 10.3, 4, 9.1, 6, 7.5);
        double harmonic = 2 / (1 / 0.6 + 1 / 0.8);
        assertThat(curve.slope(4)).isCloseTo(-harmonic, within(1e-14));
        assertThat(curve.slope(0)).isCloseTo(-(3 * 0.45 - 0.6) / 2, within(1e-14));
    }

    @Test
    void staysNearASplineOnASmoothCurve() {
        double[] q = {0, 2, 4, 6, 8, 10};
        double[] h = new double[6];
        double[] both = new double[12];
        for (int i = 0; i < 6; i++) {
            h[i] = 12 - 0.1 * q[i] - 0.08 * q[i] * q[i];
            both[2 * i] = q[i];
            both[2 * i + 1] = h[i];
        }
        Curve curve = curve(both);
        var spline = new SplineInterpolator().interpolate(q, h);
        for (double x = 0; x <= 10; x += 0.25) {
            assertThat(curve.headAt(x)).isCloseTo(spline.value(x), within(0.06));
        }
    }

    @Test
    void makesAParabolaExactly() {
        Curve curve = Curve.parabola(12, 8);
        for (double q = 0; q <= 8; q += 0.37) {
            assertThat(curve.headAt(q)).isCloseTo(12 * (1 - q * q / 64), within(1e-13));
        }
        assertThat(curve.flowAt(9)).isCloseTo(4, within(1e-13));
        assertThat(curve.lastHeadM()).isZero();
    }

    @Test
    void refusesAHumpSayingWhere() {
        assertThatThrownBy(() -> OutOfRange.within("curve", () -> curve(0, 9, 2, 9.4, 4, 8)))
                .isInstanceOfSatisfying(OutOfRange.class, e -> {
                    assertThat(e.field()).isEqualTo("curve[1].headM");
                    assertThat(e.reason()).isEqualTo(OutOfRange.Reason.NOT_FALLING);
                })
                .hasMessageContaining("9.4 m at 2 m³/h after 9 m at 0 m³/h");
    }

    @ParameterizedTest
    @CsvSource({
        "0,9,2,9, [1].headM",
        "0.1,9,2,8, [0].flowM3h",
        "0,9,0,8, [1].flowM3h",
        "0,9,1e-9,8, [1].flowM3h",
        "0,9,2,-0.01, [1].headM",
        "0,1e308,2,8, [0].headM",
        "0,9,1e308,8, [1].flowM3h",
        "0,NaN,2,8, [0].headM"
    })
    void refusesWhatIsNoCurve(double q0, double h0, double q1, double h1, String field) {
        assertThatThrownBy(() -> curve(q0, h0, q1, h1))
                .isInstanceOfSatisfying(
                        OutOfRange.class, e -> assertThat(e.field()).isEqualTo(field));
    }

    @Test
    void refusesTooFewAndTooManyPoints() {
        assertThatThrownBy(() -> curve(0, 9)).hasMessageContaining("from 2 to 40");
        double[] many = new double[82];
        for (int i = 0; i < 41; i++) {
            many[2 * i] = i;
            many[2 * i + 1] = 50 - i;
        }
        assertThatThrownBy(() -> curve(many)).hasMessageContaining("41 points");
    }

    @Test
    void saysWhichWayAHeadLiesOutside() {
        Curve curve = curve(0, 9, 5, 2);
        assertThatThrownBy(() -> curve.flowAt(9.1))
                .isInstanceOfSatisfying(
                        OutOfRange.class, e -> assertThat(e.reason()).isEqualTo(OutOfRange.Reason.ABOVE_CURVE));
        assertThatThrownBy(() -> curve.flowAt(1.9))
                .isInstanceOfSatisfying(
                        OutOfRange.class, e -> assertThat(e.reason()).isEqualTo(OutOfRange.Reason.BEYOND_CURVE));
        assertThatThrownBy(() -> curve.headAt(5.1)).hasMessageContaining("5 m³/h");
    }

    @Test
    void fitsAndLeavesResiduals() {
        List<Curve.Point> points = List.of(
                new Curve.Point(0, 10.1),
                new Curve.Point(2, 9.5),
                new Curve.Point(4, 8.3),
                new Curve.Point(6, 6.5),
                new Curve.Point(8, 3.5));
        CurveFit fit = CurveFit.of(CurveFit.Form.QUADRATIC, points);
        double sum = fit.residualsM().stream().mapToDouble(r -> r).sum();
        assertThat(sum).isCloseTo(0, within(1e-12));
        for (int i = 0; i < 5; i++) {
            Curve.Point p = points.get(i);
            assertThat(p.headM() - fit.curve().headAt(p.flowM3h()))
                    .isCloseTo(fit.residualsM().get(i), within(1e-12));
        }
        assertThat(fit.residualSdM()).isPositive().isLessThan(0.3);
    }

    @Test
    void refusesAFitThatRises() {
        List<Curve.Point> hump = List.of(new Curve.Point(0, 8), new Curve.Point(3, 9), new Curve.Point(6, 7));
        assertThatThrownBy(() -> CurveFit.of(CurveFit.Form.QUADRATIC, hump)).hasMessageContaining("does not fall");
        assertThat(CurveFit.of(CurveFit.Form.PURE_SQUARE, hump).linear()).isZero();
        assertThatThrownBy(() -> CurveFit.of(CurveFit.Form.QUADRATIC, hump.subList(0, 2)))
                .isInstanceOf(OutOfRange.class);
    }
}
