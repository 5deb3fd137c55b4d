package freshet.hydraulics;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Where a pump's curve meets what a line asks for.
 *
 * @param status how the two meet
 * @param flowM3h flow, m³/h; 0 when the pump cannot lift, null beyond the curve
 * @param headM head, m; the shut-off head when the pump cannot lift, null beyond the curve
 * @param liftM the line's lift, m
 * @param frictionM friction in all sections, m; null unless OK
 * @param fittingsM fittings and changes of bore, m; null unless OK
 * @param exitM velocity head lost at the end, m; null unless OK
 * @param sections what each section carries and takes, in flow order; empty unless OK
 */
public record DutyPoint(
        Status status,
        @Nullable Double flowM3h,
        @Nullable Double headM,
        double liftM,
        @Nullable Double frictionM,
        @Nullable Double fittingsM,
        @Nullable Double exitM,
        List<LineLoss.SectionFlow> sections) {

    /** How a curve and a line meet. */
    public enum Status {
        /** They cross at one point. */
        OK,
        /** The lift is at or above the shut-off head: no water comes. */
        CANNOT_LIFT,
        /** The line would take more than the curve's last point gives; nothing is extrapolated. */
        BEYOND_CURVE
    }

    /** Flow answered by {@link #solve} when the line takes more than the curve's last point. */
    static final double BEYOND = Double.POSITIVE_INFINITY;

    /** The duty point of a pump on a line; unique, because the curve falls and the line's head rises with the flow. */
    public static DutyPoint of(Curve curve, Line line) {
        Losses losses = new Losses(line);
        double flow = solve(curve, losses, line.liftM());
        if (flow == BEYOND) {
            return new DutyPoint(Status.BEYOND_CURVE, null, null, line.liftM(), null, null, null, List.of());
        }
        if (line.liftM() >= curve.shutOffHeadM()) {
            return new DutyPoint(
                    Status.CANNOT_LIFT, 0.0, curve.shutOffHeadM(), line.liftM(), null, null, null, List.of());
        }
        LineLoss loss = LineLoss.of(line, losses, flow);
        return new DutyPoint(
                Status.OK,
                flow,
                loss.headM(),
                line.liftM(),
                loss.frictionM(),
                loss.fittingsM(),
                loss.exitM(),
                loss.sections());
    }

    /**
     * The flow where the curve meets lift plus losses, m³/h: 0 when it cannot lift, {@link #BEYOND} beyond the curve. Newton's
     * steps from the crossing of two parabolas through the ends, halved into the bracket when they leave it or dawdle.
     */
    static double solve(Curve curve, Losses losses, double lift) {
        double low = 0;
        double high = curve.lastFlowM3h();
        double spare = curve.shutOffHeadM() - lift;
        if (spare <= 0) {
            return 0;
        }
        double lacking = lift + losses.at(high).headM - curve.lastHeadM();
        if (lacking <= 0) {
            return lacking == 0 ? high : BEYOND;
        }
        double flow = high * Math.sqrt(spare / (spare + lacking));
        for (int i = 0; i < 200; i++) {
            double off = curve.head(flow) - lift - losses.at(flow).headM;
            if (off > 0) {
                low = flow;
            } else {
                high = flow;
            }
            double newton = flow - off / (curve.slope(flow) - losses.slope);
            if (Math.abs(newton - flow) <= 1e-9 * flow) {
                return newton; // what is left is of the order of this step squared
            }
            double next = i < 30 && newton > low && newton < high ? newton : 0.5 * (low + high);
            if (Math.abs(next - flow) <= 1e-15 * flow) {
                return next;
            }
            flow = next;
        }
        return flow;
    }

    /** The refusal of callers that need a flow where the line takes more than the curve gives. */
    static OutOfRange beyond(String field, Curve curve, double lift) {
        return new OutOfRange(
                field,
                OutOfRange.Reason.BEYOND_CURVE,
                "at a lift of " + OutOfRange.show(lift, "m")
                        + " the line takes more than the curve's last point gives, "
                        + OutOfRange.show(curve.lastFlowM3h(), "m³/h"));
    }
}
