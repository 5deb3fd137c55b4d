package freshet.hydraulics;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.jspecify.annotations.Nullable;

/**
 * A smooth curve by least squares through measured or printed points: H = a - b Q - c Q², exact between its own points.
 *
 * @param form which of the terms are fitted
 * @param curve from flow 0 to the last flow of the points, or to where its head is 0 when that comes first
 * @param shutOffHeadM a, m
 * @param linear b, m per m³/h; 0 in the pure form
 * @param quadratic c, m per (m³/h)²
 * @param residualsM head of each point less the fitted head, m, in the order given
 * @param residualSdM root of the sum of squares over points less coefficients, m; null when there are no more points than
 *     coefficients
 */
public record CurveFit(
        Form form,
        Curve curve,
        double shutOffHeadM,
        double linear,
        double quadratic,
        List<Double> residualsM,
        @Nullable Double residualSdM) {

    /** Shapes that can be fitted. */
    public enum Form {
        /** H0 (1 - (Q/Q0)²): two coefficients. */
        PURE_SQUARE,
        /** H0 - b Q - c Q²: three coefficients. */
        QUADRATIC;

        int coefficients() {
            return this == PURE_SQUARE ? 2 : 3;
        }
    }

    /** Most points of a fit. */
    public static final int MOST_POINTS = 500;

    /**
     * Fits a curve.
     *
     * @param form its shape
     * @param points at least as many different flows as the shape has coefficients, at most 500; flows 0 to 100 000 m³/h, heads
     *     -100 to 5000 m; need not fall, nor start at 0
     * @throws OutOfRange when the points are too few, or the fitted curve does not fall from flow 0 on
     */
    public static CurveFit of(Form form, List<Curve.Point> points) {
        int n = points.size();
        OutOfRange.checkCount("points", n, "points", form.coefficients(), MOST_POINTS);
        double last = 0;
        for (int i = 0; i < n; i++) {
            String path = "points[" + i + "]";
            OutOfRange.check(path + ".flowM3h", points.get(i).flowM3h(), "m³/h", 0, LineLoss.HIGHEST_FLOW_M3H);
            OutOfRange.check(path + ".headM", points.get(i).headM(), "m", -100, 5000);
            last = Math.max(last, points.get(i).flowM3h());
        }
        long flows =
                points.stream().mapToDouble(Curve.Point::flowM3h).distinct().count();
        OutOfRange.checkCount("points", (int) flows, "different flows", form.coefficients(), MOST_POINTS);
        OutOfRange.check("points", last, "m³/h as the highest flow", 1e-3, LineLoss.HIGHEST_FLOW_M3H);
        double[] c = solve(form, points, last);
        double b = form == Form.PURE_SQUARE ? 0 : -c[1] / last;
        double bend = -c[form.coefficients() - 1] / last / last;
        double end = end(c[0], b, bend, last);
        List<Double> residuals = new ArrayList<>(n);
        double squares = 0;
        for (Curve.Point p : points) {
            double residual = p.headM() - (c[0] - p.flowM3h() * (b + bend * p.flowM3h()));
            squares += residual * residual;
            residuals.add(residual);
        }
        int spare = n - form.coefficients();
        return new CurveFit(
                form,
                Curve.quadratic(c[0], b, bend, end),
                c[0],
                b,
                bend,
                List.copyOf(residuals),
                spare > 0 ? Double.valueOf(Math.sqrt(squares / spare)) : null);
    }

    /** Coefficients over Q/last by QR, which keeps the digits that normal equations lose. */
    private static double[] solve(Form form, List<Curve.Point> points, double last) {
        int n = points.size();
        double[][] rows = new double[n][];
        double[] heads = new double[n];
        for (int i = 0; i < n; i++) {
            double x = points.get(i).flowM3h() / last;
            rows[i] = form == Form.PURE_SQUARE ? new double[] {1, x * x} : new double[] {1, x, x * x};
            heads[i] = points.get(i).headM();
        }
        RealMatrix matrix = MatrixUtils.createRealMatrix(rows);
        QRDecomposition qr = new QRDecomposition(matrix, 1e-12);
        if (!qr.getSolver().isNonSingular()) {
            throw new OutOfRange(
                    "points",
                    OutOfRange.Reason.COUNT,
                    "the flows of the points lie too close together for " + form.coefficients() + " coefficients");
        }
        return qr.getSolver().solve(MatrixUtils.createRealVector(heads)).toArray();
    }

    /** Where the curve ends, having made sure that it falls all the way there. */
    private static double end(double a, double b, double c, double last) {
        boolean risesAtStart = b < 0 || b == 0 && !(c > 0);
        double steepness = b + 2 * c * last;
        if (!(a > 0) || risesAtStart || !(steepness > 0)) {
            throw new OutOfRange(
                    "points",
                    OutOfRange.Reason.NOT_FALLING,
                    "the fitted curve H = " + a + " - " + b + " Q - " + c + " Q² (m, m³/h) does not fall from 0 to "
                            + OutOfRange.show(last, "m³/h"));
        }
        if (a - last * (b + c * last) >= 0) {
            return last;
        }
        return 2 * a / (b + Math.sqrt(b * b + 4 * a * c));
    }
}
