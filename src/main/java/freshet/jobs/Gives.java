package freshet.jobs;

import freshet.hydraulics.DutyPoint;
import freshet.hydraulics.DutyPoint.Status;
import freshet.hydraulics.Line;
import org.jspecify.annotations.Nullable;

/**
 * What a pump gives through a line, with its doubt.
 *
 * @param lowM3h at the low end of the doubt; 0 when no water comes there
 * @param highM3h at the high end; null beyond the curve
 * @param lastM3h the flow of the curve's last point: the least that comes when the duty point lies beyond
 */
record Gives(DutyPoint duty, double lowM3h, @Nullable Double highM3h, double lastM3h) {

    /**
     * Through a line, the pump's doubt and the line's ({@link JobLine#LOSS_DOUBT}) added in quadrature.
     *
     * @param outletMm bore at the pump's outlet, where known
     */
    static Gives of(Curves curves, JobLine line, @Nullable Double outletMm) {
        Line middle = line.behind(outletMm);
        DutyPoint duty = DutyPoint.of(curves.curve(), middle);
        double last = curves.curve().lastFlowM3h();
        Double flow = duty.flowM3h();
        Double low = lower(
                flow,
                DutyPoint.of(curves.lower(), middle).flowM3h(),
                DutyPoint.of(curves.curve(), line.losing(1 + JobLine.LOSS_DOUBT).behind(outletMm))
                        .flowM3h());
        Double most = DutyPoint.of(curves.upper(), middle).flowM3h();
        Double easiest = DutyPoint.of(
                        curves.curve(), line.losing(1 - JobLine.LOSS_DOUBT).behind(outletMm))
                .flowM3h();
        return new Gives(
                duty,
                low == null ? curves.lower().lastFlowM3h() : low,
                flow == null || most == null || easiest == null
                        ? null
                        : Double.valueOf(flow + Math.hypot(most - flow, easiest - flow)),
                last);
    }

    /** The low end; where the flow itself lies beyond the curve, the least of what does not, and null when all do. */
    private static @Nullable Double lower(@Nullable Double flow, @Nullable Double byPump, @Nullable Double byLine) {
        if (flow == null) {
            return byPump == null ? byLine : byLine == null ? byPump : Double.valueOf(Math.min(byPump, byLine));
        }
        double pump = byPump == null ? 0 : flow - byPump;
        double line = byLine == null ? 0 : flow - byLine;
        return Math.max(0, flow - Math.hypot(pump, line));
    }

    public boolean beyondCurve() {
        return duty.status() == Status.BEYOND_CURVE;
    }

    public boolean noWater() {
        return duty.status() == Status.CANNOT_LIFT;
    }

    /** The flow, m³/h; where the duty point lies beyond the curve, the least that it can be. */
    public double flowM3h() {
        return duty.flowM3h() == null ? lastM3h : duty.flowM3h();
    }

    /** Expanded uncertainty, m³/h: the wider side; null where one side is open or dry. */
    @Nullable
    Double uncertaintyM3h() {
        if (duty.flowM3h() == null || highM3h == null || lowM3h == 0) {
            return null;
        }
        return Math.max(highM3h - duty.flowM3h(), duty.flowM3h() - lowM3h);
    }

    /** What is given beyond what is wanted, as a part of it; below 0 when it falls short. */
    public double margin(double wantedM3h) {
        return flowM3h() / wantedM3h - 1;
    }
}
