package freshet.hydraulics;

import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;
import org.jspecify.annotations.Nullable;

/**
 * The time a pump takes to lower the water in a vessel or pit while the lift grows and water may run in.
 *
 * @param status whether the stop level is reached
 * @param minutes time from start to stop level, min; null when it never empties
 * @param volumeM3 held between the two levels, m³
 * @param startFlowM3h the pump's flow at the start level, m³/h
 * @param stopFlowM3h at the stop level, m³/h; null when it never empties
 * @param settlesAtLevelM where flow and inflow balance when it never empties, m; null when it empties, and when the water rises
 *     above the vessel's table or beyond what the curve gives
 */
public record Drawdown(
        Status status,
        @Nullable Double minutes,
        double volumeM3,
        double startFlowM3h,
        @Nullable Double stopFlowM3h,
        @Nullable Double settlesAtLevelM) {

    /** Whether the stop level is reached. */
    public enum Status {
        EMPTIES,
        NEVER_EMPTIES
    }

    /**
     * One row of a vessel's table; the area is linear between rows.
     *
     * @param levelM height of the level, -1000 to 1000 m
     * @param areaM2 plan area there, 0 to 10 000 000 m²
     */
    public record Level(double levelM, double areaM2) {}

    /** Most rows of a vessel's table. */
    public static final int MOST_LEVELS = 200;

    /** Gauss-Legendre on -1 to 1; exact for polynomials of degree 23. */
    private static final GaussIntegrator RULE = new GaussIntegratorFactory().legendre(12);

    private static final double SMALLEST_FALL_M = 1e-6;

    /**
     * Works out a drawdown.
     *
     * @param curve the pump
     * @param line its lift holds at the start level
     * @param vessel 2 to 200 rows, levels rising
     * @param startLevelM within the table
     * @param stopLevelM within the table, at least 0.000001 m below the start
     * @param inflowM3h 0 to 100 000 m³/h
     * @throws OutOfRange for these, and when the line takes more than the curve's last point gives at the start level
     */
    public static Drawdown of(
            Curve curve, Line line, List<Level> vessel, double startLevelM, double stopLevelM, double inflowM3h) {
        Vessel held = new Vessel(vessel);
        OutOfRange.check("startLevelM", startLevelM, "m", held.bottom() + SMALLEST_FALL_M, held.top());
        OutOfRange.check("stopLevelM", stopLevelM, "m", held.bottom(), startLevelM - SMALLEST_FALL_M);
        OutOfRange.check("inflowM3h", inflowM3h, "m³/h", 0, LineLoss.HIGHEST_FLOW_M3H);
        double volume = held.volume(stopLevelM, startLevelM);
        Losses losses = new Losses(line);
        double start = DutyPoint.solve(curve, losses, line.liftM());
        if (start == DutyPoint.BEYOND) {
            throw DutyPoint.beyond("line", curve, line.liftM());
        }
        double liftAtNought = line.liftM() + startLevelM;
        double stop = DutyPoint.solve(curve, losses, liftAtNought - stopLevelM);
        if (stop <= inflowM3h) {
            Double settles = start == 0 && inflowM3h == 0
                    ? Double.valueOf(startLevelM)
                    : settles(curve, losses, liftAtNought, inflowM3h, held.top());
            return new Drawdown(Status.NEVER_EMPTIES, null, volume, start, null, settles);
        }
        Fall fall = new Fall(curve, losses, held, liftAtNought, inflowM3h);
        double hours = fall.hours(stop, start, stopLevelM, startLevelM, volume);
        return new Drawdown(Status.EMPTIES, 60 * hours, volume, start, stop, null);
    }

    /** Where the pump's flow equals the inflow: its head there, less the losses, is the lift. */
    private static @Nullable Double settles(
            Curve curve, Losses losses, double liftAtNought, double inflow, double top) {
        if (inflow > curve.lastFlowM3h()) {
            return null;
        }
        double level = liftAtNought - (curve.head(inflow) - losses.at(inflow).headM);
        return level > top ? null : Double.valueOf(level);
    }

    /** The vessel's table. */
    private static final class Vessel {

        private final double[] levels;
        private final double[] areas;

        Vessel(List<Level> rows) {
            int n = rows.size();
            OutOfRange.checkCount("vessel", n, "levels", 2, MOST_LEVELS);
            levels = new double[n];
            areas = new double[n];
            double most = 0;
            for (int i = 0; i < n; i++) {
                String row = "vessel[" + i + "]";
                levels[i] = OutOfRange.check(row + ".levelM", rows.get(i).levelM(), "m", -1000, 1000);
                areas[i] = OutOfRange.check(row + ".areaM2", rows.get(i).areaM2(), "m²", 0, 1e7);
                most = Math.max(most, areas[i]);
                if (i > 0 && !(levels[i] >= levels[i - 1] + SMALLEST_FALL_M)) {
                    throw new OutOfRange(
                            row + ".levelM",
                            OutOfRange.Reason.NOT_RISING,
                            "levelM is " + OutOfRange.show(levels[i], "m") + " after "
                                    + OutOfRange.show(levels[i - 1], "m")
                                    + "; levels must rise by at least 0.000001 m from row to row");
                }
            }
            if (!(most >= 1e-6)) {
                throw new OutOfRange(
                        "vessel",
                        OutOfRange.Reason.RANGE,
                        "the largest areaM2 of the vessel is " + OutOfRange.show(most, "m²")
                                + "; it must be at least 0.000001 m²");
            }
        }

        double bottom() {
            return levels[0];
        }

        double top() {
            return levels[levels.length - 1];
        }

        double area(double level) {
            int i = 0;
            while (i < levels.length - 2 && levels[i + 1] < level) {
                i++;
            }
            double share = (level - levels[i]) / (levels[i + 1] - levels[i]);
            return areas[i] + Math.min(1, Math.max(0, share)) * (areas[i + 1] - areas[i]);
        }

        double volume(double from, double to) {
            double volume = 0;
            for (int i = 0; i + 1 < levels.length; i++) {
                double low = Math.max(from, levels[i]);
                double high = Math.min(to, levels[i + 1]);
                if (high > low) {
                    volume += (high - low) * area((low + high) / 2);
                }
            }
            return volume;
        }
    }

    /**
     * The integral of area/(flow - inflow) over the level, turned over to the flow: the level that belongs to a flow is explicit,
     * so that no duty point is sought inside the integral, and with u = ln(flow - inflow) the integrand stays bounded however
     * near the pump comes to the inflow: hours = integral of area x (-dlift/dflow) du.
     */
    private record Fall(Curve curve, Losses losses, Vessel vessel, double liftAtNought, double inflow) {

        double hours(double stop, double start, double stopLevel, double startLevel, double volume) {
            double[] breaks = breaks(stop, start, stopLevel, startLevel);
            double hours = 0;
            double swept = 0;
            for (int i = 0; i + 1 < breaks.length; i++) {
                double from = Math.log(breaks[i] - inflow);
                double to = Math.log(breaks[i + 1] - inflow);
                int parts = (int) Math.ceil(to - from);
                double half = (to - from) / (2 * parts);
                for (int k = 0; k < parts; k++) {
                    double middle = from + (2 * k + 1) * half;
                    for (int p = 0; p < RULE.getNumberOfPoints(); p++) {
                        double u = middle + half * RULE.getPoint(p);
                        double part = half * RULE.getWeight(p) * weight(u);
                        hours += part;
                        swept += part * Math.exp(u);
                    }
                }
            }
            // the volume is known exactly: it takes out the rounding of two nearly equal flows at the ends
            return swept > 0 ? hours * (volume / swept) : volume / (start - inflow);
        }

        private double weight(double u) {
            double flow = Math.min(inflow + Math.exp(u), curve.lastFlowM3h());
            double lift = curve.head(flow) - losses.at(flow).headM;
            return vessel.area(liftAtNought - lift) * (losses.slope - curve.slope(flow));
        }

        /** Flows between which everything is smooth: bends of the curve, of the friction law and of the vessel. */
        private double[] breaks(double stop, double start, double stopLevel, double startLevel) {
            DoubleStream bends = DoubleStream.concat(Arrays.stream(curve.knots()), Arrays.stream(losses.changes()));
            DoubleStream rows = Arrays.stream(vessel.levels)
                    .filter(level -> level > stopLevel && level < startLevel)
                    .map(level -> DutyPoint.solve(curve, losses, liftAtNought - level));
            return DoubleStream.concat(
                            DoubleStream.of(stop, start),
                            DoubleStream.concat(bends, rows).filter(flow -> flow > stop && flow < start))
                    .sorted()
                    .distinct()
                    .toArray();
        }
    }
}
