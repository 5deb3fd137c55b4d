package freshet.hydraulics;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * A pump's head over flow, falling from the shut-off head at flow 0 to its last point; never extrapolated.
 *
 * <p>Between points a monotone cubic: Fritsch and Carlson, SIAM J. Numer. Anal. 17 (1980) 238, with the slopes of Fritsch and
 * Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300 (the PCHIP of common numerics libraries). Curves made from a formula carry
 * the formula's own slopes instead, which makes a quadratic exact.
 */
public final class Curve {

    /** Fewest and most points of a curve. */
    public static final int FEWEST_POINTS = 2;

    public static final int MOST_POINTS = 40;

    private static final double HIGHEST_HEAD_M = 5000;
    private static final double SMALLEST_STEP_M3H = 1e-6;
    private static final int FORMULA_POINTS = 9;
    /** What a caller's own arithmetic may be off at the ends. */
    private static final double ROUNDING = 1e-12;

    /**
     * One point of a curve; a plain carrier, checked by the curve that holds it.
     *
     * @param flowM3h m³/h
     * @param headM m
     */
    public record Point(double flowM3h, double headM) {}

    private final double[] flows;
    private final double[] heads;
    private final double[] slopes;

    private Curve(double[] flows, double[] heads, double[] slopes) {
        this.flows = flows;
        this.heads = heads;
        this.slopes = slopes;
    }

    /**
     * A curve through points.
     *
     * @param points 2 to 40; flows from 0, each at least 1e-6 m³/h above the one before, up to 100 000 m³/h; heads from 0 to
     *     5000 m, each below the one before
     * @throws OutOfRange with a path such as {@code [3].headM}; a hump or a flat stretch is refused where it ends
     */
    public static Curve of(List<Point> points) {
        int n = points.size();
        OutOfRange.checkCount("", n, "points", FEWEST_POINTS, MOST_POINTS);
        double[] q = new double[n];
        double[] h = new double[n];
        for (int i = 0; i < n; i++) {
            q[i] = OutOfRange.check(
                    "[" + i + "].flowM3h", points.get(i).flowM3h(), "m³/h", 0, i == 0 ? 0 : LineLoss.HIGHEST_FLOW_M3H);
            h[i] = OutOfRange.check("[" + i + "].headM", points.get(i).headM(), "m", 0, HIGHEST_HEAD_M);
            if (i > 0 && !(q[i] >= q[i - 1] + SMALLEST_STEP_M3H)) {
                throw new OutOfRange(
                        "[" + i + "].flowM3h",
                        OutOfRange.Reason.NOT_RISING,
                        "flowM3h is " + OutOfRange.show(q[i], "m³/h") + " after " + OutOfRange.show(q[i - 1], "m³/h")
                                + "; flows must rise by at least 0.000001 m³/h from point to point");
            }
            if (i > 0 && !(h[i] < h[i - 1])) {
                throw new OutOfRange(
                        "[" + i + "].headM",
                        OutOfRange.Reason.NOT_FALLING,
                        "headM is " + OutOfRange.show(h[i], "m") + " at " + OutOfRange.show(q[i], "m³/h") + " after "
                                + OutOfRange.show(h[i - 1], "m") + " at " + OutOfRange.show(q[i - 1], "m³/h")
                                + "; heads must fall from point to point");
            }
        }
        return new Curve(q, h, pchipSlopes(q, h));
    }

    /**
     * The two-parameter curve H = H0 (1 - (Q/Q0)²), exact between its points.
     *
     * @param shutOffHeadM H0, 0.001 to 5000 m
     * @param openFlowM3h Q0, the flow at no head, 0.001 to 100 000 m³/h
     */
    public static Curve parabola(double shutOffHeadM, double openFlowM3h) {
        OutOfRange.check("shutOffHeadM", shutOffHeadM, "m", 1e-3, HIGHEST_HEAD_M);
        OutOfRange.check("openFlowM3h", openFlowM3h, "m³/h", 1e-3, LineLoss.HIGHEST_FLOW_M3H);
        double bend = shutOffHeadM / openFlowM3h / openFlowM3h;
        return quadratic(shutOffHeadM, 0, bend, openFlowM3h);
    }

    /** H = a - b Q - c Q² from flow 0 to {@code last}, which the caller has found to fall all the way. */
    static Curve quadratic(double a, double b, double c, double last) {
        double[] q = new double[FORMULA_POINTS];
        double[] h = new double[FORMULA_POINTS];
        double[] d = new double[FORMULA_POINTS];
        for (int i = 0; i < FORMULA_POINTS; i++) {
            q[i] = last * i / (FORMULA_POINTS - 1);
            h[i] = Math.max(0, a - q[i] * (b + c * q[i]));
            d[i] = -b - 2 * c * q[i];
        }
        return new Curve(q, h, d);
    }

    private static double[] pchipSlopes(double[] q, double[] h) {
        int n = q.length;
        double[] secant = new double[n - 1];
        for (int i = 0; i < n - 1; i++) {
            secant[i] = (h[i + 1] - h[i]) / (q[i + 1] - q[i]);
        }
        double[] slope = new double[n];
        if (n == 2) {
            slope[0] = secant[0];
            slope[1] = secant[0];
            return slope;
        }
        for (int i = 1; i < n - 1; i++) {
            double before = q[i] - q[i - 1];
            double after = q[i + 1] - q[i];
            double w1 = 2 * after + before;
            double w2 = after + 2 * before;
            slope[i] = (w1 + w2) / (w1 / secant[i - 1] + w2 / secant[i]);
        }
        slope[0] = endSlope(q[1] - q[0], q[2] - q[1], secant[0], secant[1]);
        slope[n - 1] = endSlope(q[n - 1] - q[n - 2], q[n - 2] - q[n - 3], secant[n - 2], secant[n - 3]);
        return slope;
    }

    /** One-sided three-point slope, kept from rising; all secants fall. */
    private static double endSlope(double near, double far, double nearSecant, double farSecant) {
        double slope = ((2 * near + far) * nearSecant - near * farSecant) / (near + far);
        return Math.min(slope, 0);
    }

    /** The points, first at flow 0. */
    public List<Point> points() {
        return IntStream.range(0, flows.length)
                .mapToObj(i -> new Point(flows[i], heads[i]))
                .toList();
    }

    /** Head at no flow, m. */
    public double shutOffHeadM() {
        return heads[0];
    }

    /** Flow of the last point, m³/h. */
    public double lastFlowM3h() {
        return flows[flows.length - 1];
    }

    /** Head of the last point, m. */
    public double lastHeadM() {
        return heads[heads.length - 1];
    }

    /**
     * Head at a flow, m.
     *
     * @param flowM3h from 0 to the last point's flow
     * @throws OutOfRange beyond the curve
     */
    public double headAt(double flowM3h) {
        if (flowM3h > lastFlowM3h() * (1 + ROUNDING)) {
            throw OutOfRange.beyondFlow("flowM3h", flowM3h, lastFlowM3h());
        }
        return head(Math.min(lastFlowM3h(), OutOfRange.check("flowM3h", flowM3h, "m³/h", 0, Double.MAX_VALUE)));
    }

    /**
     * Flow at a head, m³/h.
     *
     * @param headM from the last point's head to the shut-off head
     * @throws OutOfRange outside, saying which way
     */
    public double flowAt(double headM) {
        double slack = ROUNDING * shutOffHeadM();
        if (headM > shutOffHeadM() + slack) {
            throw OutOfRange.aboveCurve("headM", headM, shutOffHeadM());
        }
        if (headM < lastHeadM() - slack) {
            throw OutOfRange.belowCurve("headM", headM, lastHeadM());
        }
        OutOfRange.check("headM", headM, "m", -slack, Double.MAX_VALUE);
        return flow(Math.max(lastHeadM(), Math.min(shutOffHeadM(), headM)));
    }

    /** Head at a flow within the curve, unchecked. */
    double head(double flow) {
        int i = segmentOf(flow);
        double span = flows[i + 1] - flows[i];
        double t = (flow - flows[i]) / span;
        return cubic(i, span, t);
    }

    /** Slope of the head at a flow within the curve, m per m³/h, unchecked. */
    double slope(double flow) {
        int i = segmentOf(flow);
        double span = flows[i + 1] - flows[i];
        return cubicSlope(i, span, (flow - flows[i]) / span);
    }

    /** Flow at a head within the curve, unchecked. */
    double flow(double head) {
        int i = 0;
        while (i < flows.length - 2 && heads[i + 1] > head) {
            i++;
        }
        double span = flows[i + 1] - flows[i];
        double low = 0;
        double high = 1;
        double t = (heads[i] - head) / (heads[i] - heads[i + 1]);
        for (int step = 0; step < 80; step++) {
            double off = cubic(i, span, t) - head;
            if (off > 0) {
                low = t;
            } else {
                high = t;
            }
            double newton = t - off / (cubicSlope(i, span, t) * span);
            double next = step < 20 && newton >= low && newton <= high ? newton : 0.5 * (low + high);
            if (Math.abs(next - t) <= 1e-15) {
                break;
            }
            t = next;
        }
        return flows[i] + span * Math.min(1, Math.max(0, t));
    }

    private int segmentOf(double flow) {
        int low = 0;
        int high = flows.length - 1;
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (flows[middle] <= flow) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private double cubic(int i, double span, double t) {
        double d0 = slopes[i] * span;
        double d1 = slopes[i + 1] * span;
        double rise = heads[i + 1] - heads[i];
        return heads[i] + t * (d0 + t * (3 * rise - 2 * d0 - d1 + t * (d0 + d1 - 2 * rise)));
    }

    private double cubicSlope(int i, double span, double t) {
        double d0 = slopes[i] * span;
        double d1 = slopes[i + 1] * span;
        double rise = heads[i + 1] - heads[i];
        return (d0 + t * (2 * (3 * rise - 2 * d0 - d1) + t * 3 * (d0 + d1 - 2 * rise))) / span;
    }

    /** Flows of the points, m³/h. */
    double[] knots() {
        return flows.clone();
    }

    /**
     * The curve with every flow and every head multiplied.
     *
     * @param flowFactor 0.0001 to 10 000
     * @param headFactor 0.0001 to 10 000
     */
    public Curve scaled(double flowFactor, double headFactor) {
        OutOfRange.check("flowFactor", flowFactor, "", 1e-4, 1e4);
        OutOfRange.check("headFactor", headFactor, "", 1e-4, 1e4);
        return new Curve(times(flows, flowFactor), times(heads, headFactor), times(slopes, headFactor / flowFactor));
    }

    private static double[] times(double[] values, double factor) {
        return Arrays.stream(values).map(v -> v * factor).toArray();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Curve curve
                && Arrays.equals(flows, curve.flows)
                && Arrays.equals(heads, curve.heads)
                && Arrays.equals(slopes, curve.slopes);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(heads) * 31 + Arrays.hashCode(flows);
    }

    @Override
    public String toString() {
        return "Curve" + points();
    }
}
