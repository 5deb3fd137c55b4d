package freshet.hydraulics;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What wear has made of a reference curve, as far as the tests tell: H = b H_ref(Q/a) with a flow factor a and a head factor
 * b. One duty point gives a (b stays 1); a shut-off head alone gives b (a stays 1); two or more unlike points give both, by
 * weighted least squares. Wear is not one number: {@link #on(Line)} states the capacity left for one job.
 *
 * @param identified which factors the tests tell
 * @param flowFactor a
 * @param headFactor b
 * @param flowFactorUncertainty standard uncertainty of a with the reference curve's own; null when a is
 *     assumed or the reference curve is level there
 * @param headFactorUncertainty standard uncertainty of b with the reference curve's own; null when b is assumed
 * @param covariance of a and b from the tests
 * @param curve the worn curve
 * @param reference the curve that wear is counted from
 * @param residualsM head of each test less the worn curve's, m
 */
public record WornCurve(
        Identified identified,
        double flowFactor,
        double headFactor,
        @Nullable Double flowFactorUncertainty,
        @Nullable Double headFactorUncertainty,
        double covariance,
        Curve curve,
        Curve reference,
        List<Double> residualsM) {

    /** Which factors the tests tell. */
    public enum Identified {
        FLOW_FACTOR,
        HEAD_FACTOR,
        BOTH
    }

    /**
     * One tested point.
     *
     * @param flowM3h 0 (valve shut) to 100 000 m³/h
     * @param headM total head, 0.001 to 5000 m
     * @param flowUncertaintyM3h standard uncertainty of the flow, 0 to 100 000 m³/h
     * @param headUncertaintyM standard uncertainty of the head at a given flow, 0 to 5000 m
     * @param headPerFlow how the head, if computed from the line, moves with the flow; 0 for a gauge, m per m³/h
     */
    public record TestPoint(
            double flowM3h, double headM, double flowUncertaintyM3h, double headUncertaintyM, double headPerFlow) {

        /** A head read with the valve shut. */
        public static TestPoint shutOff(double headM, double headUncertaintyM) {
            return new TestPoint(0, headM, 0, headUncertaintyM, 0);
        }

        /** The point of a flow test. */
        public static TestPoint of(MeasuredFlow flow, MeasuredHead head) {
            double q = flow.flowM3h();
            return new TestPoint(
                    q, head.headAt(q), flow.standardUncertaintyM3h(), head.standardUncertaintyM(), head.slopeAt(q));
        }

        private void check(String path) {
            OutOfRange.check(path + ".flowM3h", flowM3h, "m³/h", 0, LineLoss.HIGHEST_FLOW_M3H);
            OutOfRange.check(path + ".headM", headM, "m", 1e-3, 5000);
            OutOfRange.check(path + ".flowUncertaintyM3h", flowUncertaintyM3h, "m³/h", 0, LineLoss.HIGHEST_FLOW_M3H);
            OutOfRange.check(path + ".headUncertaintyM", headUncertaintyM, "m", 0, 5000);
            OutOfRange.check(path + ".headPerFlow", headPerFlow, "m per m³/h", -1e9, 1e9);
        }
    }

    /**
     * What is left for one job.
     *
     * @param reference the duty point of the reference curve
     * @param worn the duty point of the worn curve
     * @param fraction worn flow over reference flow; null unless both have a flow
     * @param expandedUncertainty of the fraction, k = 2; null with it
     */
    public record Capacity(
            DutyPoint reference,
            DutyPoint worn,
            @Nullable Double fraction,
            @Nullable Double expandedUncertainty) {}

    /** Most tested points. */
    public static final int MOST_POINTS = 100;

    private static final double LOWEST_FACTOR = 0.01;
    private static final double HIGHEST_FACTOR = 5;

    /**
     * Finds the worn curve.
     *
     * @param reference the rated curve, or the unit's own first curve, at the speed of the tests
     * @param tests 1 to 100 points
     * @param curveUncertaintyFraction standard uncertainty of the reference curve over its value, 0 to 1
     * @throws OutOfRange when a test cannot lie on a scaled reference curve
     */
    public static WornCurve of(Curve reference, List<TestPoint> tests, double curveUncertaintyFraction) {
        OutOfRange.checkCount("tests", tests.size(), "points", 1, MOST_POINTS);
        for (int i = 0; i < tests.size(); i++) {
            tests.get(i).check("tests[" + i + "]");
        }
        OutOfRange.check("curveUncertaintyFraction", curveUncertaintyFraction, "", 0, 1);
        WornFit fit = WornFit.of(reference, tests);
        double a = OutOfRange.check("flowFactor", fit.flowFactor(), "", LOWEST_FACTOR, HIGHEST_FACTOR);
        double b = OutOfRange.check("headFactor", fit.headFactor(), "", LOWEST_FACTOR, HIGHEST_FACTOR);
        Curve worn = reference.scaled(a, b);
        List<Double> residuals = new ArrayList<>();
        for (int i = 0; i < tests.size(); i++) {
            TestPoint test = tests.get(i);
            if (test.flowM3h() > worn.lastFlowM3h() * (1 + 1e-9)) {
                throw OutOfRange.beyondFlow("tests[" + i + "].flowM3h", test.flowM3h(), worn.lastFlowM3h());
            }
            residuals.add(test.headM() - worn.head(Math.min(test.flowM3h(), worn.lastFlowM3h())));
        }
        Identified told = fit.identified();
        return new WornCurve(
                told,
                a,
                b,
                told == Identified.HEAD_FACTOR ? null : uncertainty(fit.varianceA(), a * curveUncertaintyFraction),
                told == Identified.FLOW_FACTOR ? null : uncertainty(fit.varianceB(), b * curveUncertaintyFraction),
                Double.isFinite(fit.covariance()) ? fit.covariance() : 0,
                worn,
                reference,
                List.copyOf(residuals));
    }

    private static @Nullable Double uncertainty(double variance, double ofCurve) {
        double both = Math.hypot(Math.sqrt(variance), ofCurve);
        return Double.isFinite(both) ? Double.valueOf(both) : null;
    }

    /**
     * The capacity left for one job; its uncertainty by propagation from the two factors. A factor that was assumed counts as
     * exact, so that the figure is good near the head of the test and less so far from it.
     */
    public Capacity on(Line line) {
        DutyPoint before = DutyPoint.of(reference, line);
        DutyPoint after = DutyPoint.of(curve, line);
        Double fresh = before.flowM3h();
        Double left = after.flowM3h();
        if (fresh == null || left == null || fresh == 0) {
            return new Capacity(before, after, null, null);
        }
        double fraction = left / fresh;
        if (left == 0) {
            return new Capacity(before, after, fraction, null);
        }
        // the duty flow q holds b H_ref(q/a) = lift + losses(q)
        double slope = curve.slope(left);
        double steepness = new Losses(line).at(left).slope - slope;
        double perA = -slope * left / flowFactor / steepness;
        double perB = after.headM() == null ? 0 : after.headM() / headFactor / steepness;
        double uA = flowFactorUncertainty == null ? 0 : flowFactorUncertainty;
        double uB = headFactorUncertainty == null ? 0 : headFactorUncertainty;
        double variance = perA * perA * uA * uA + perB * perB * uB * uB + 2 * perA * perB * covariance;
        double expanded = 2 * Math.sqrt(Math.max(0, variance)) / fresh;
        return new Capacity(before, after, fraction, Double.isFinite(expanded) ? Double.valueOf(expanded) : null);
    }
}
