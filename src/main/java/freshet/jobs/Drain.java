package freshet.jobs;

import freshet.hydraulics.Drawdown;
import freshet.hydraulics.Line;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How long it takes to pump the volume out while water runs in. Where the plan area is known the lift grows as the water falls, with
 * the same area from top to bottom; else the lift is taken to stay.
 *
 * @param minutes null when it never empties
 * @param quickestMinutes at the high end of the pump's doubt; null when nothing can be said there
 * @param slowestMinutes at the low end; null when it never empties there
 * @param leftM depth of water at which it settles, where that is known
 */
record Drain(
        boolean liftGrows,
        @Nullable Double minutes,
        @Nullable Double quickestMinutes,
        @Nullable Double slowestMinutes,
        @Nullable Double leftM) {

    /** Null when there is nothing to drain, or the pump would run beyond its curve. */
    static @Nullable Drain of(Job job, Curves curves, Gives gives, Line line) {
        Double volumeL = job.volumeL();
        if (volumeL == null || gives.beyondCurve()) {
            return null;
        }
        Double depthM = job.depthM();
        Double areaM2 = job.areaM2();
        if (depthM == null || areaM2 == null || depthM < 1e-5) {
            Double high = gives.highM3h();
            return new Drain(
                    false,
                    steady(volumeL, gives.flowM3h(), job.inflowM3h()),
                    high == null ? null : steady(volumeL, high, job.inflowM3h()),
                    steady(volumeL, gives.lowM3h(), job.inflowM3h()),
                    null);
        }
        List<Drawdown.Level> vessel = List.of(new Drawdown.Level(0, areaM2), new Drawdown.Level(depthM, areaM2));
        Drawdown fall = Drawdown.of(curves.curve(), line, vessel, depthM, 0, job.inflowM3h());
        Double high = gives.highM3h();
        return new Drain(
                true,
                fall.minutes(),
                high == null ? null : stretched(fall, high / gives.flowM3h(), job.inflowM3h()),
                stretched(fall, gives.lowM3h() / gives.flowM3h(), job.inflowM3h()),
                fall.settlesAtLevelM());
    }

    /** The same fall when the pump gives this part of its flow all the way; null when it never empties then. */
    private static @Nullable Double stretched(Drawdown fall, double part, double inflowM3h) {
        Double minutes = fall.minutes();
        Double last = fall.stopFlowM3h();
        if (minutes == null || last == null || part * last <= inflowM3h) {
            return null;
        }
        double start = fall.startFlowM3h();
        return minutes * (start + last - 2 * inflowM3h) / (part * (start + last) - 2 * inflowM3h);
    }

    private static @Nullable Double steady(double volumeL, double flowM3h, double inflowM3h) {
        return flowM3h <= inflowM3h ? null : Double.valueOf(60 * volumeL / 1000 / (flowM3h - inflowM3h));
    }

    public boolean neverEmpties() {
        return minutes == null;
    }
}
