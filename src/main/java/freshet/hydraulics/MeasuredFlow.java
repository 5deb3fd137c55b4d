package freshet.hydraulics;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A flow as measured in the field, with its standard uncertainty by the law of propagation (JCGM 100:2008, 5.1.2) and what the
 * method takes for granted.
 *
 * @param method how it was measured
 * @param flowM3h flow, m³/h
 * @param standardUncertaintyM3h standard uncertainty, m³/h
 * @param scatterM3h the part of it that comes from the scatter of the repeats, 0 when another part was larger, m³/h
 * @param repeats how many times the flow was measured
 * @param repeatability sample standard deviation of the repeats over their mean; null for one
 * @param meanSeconds mean time of the repeats, s; null where no time was taken
 * @param assumptions what must be true for the figure to hold
 */
public record MeasuredFlow(
        Method method,
        double flowM3h,
        double standardUncertaintyM3h,
        double scatterM3h,
        int repeats,
        @Nullable Double repeatability,
        @Nullable Double meanSeconds,
        List<Assumption> assumptions) {

    /** Ways to measure a flow. */
    public enum Method {
        TIMED_CONTAINER,
        LEVEL_DROP,
        METER,
        TRAJECTORY
    }

    /** What a method takes for granted. */
    public enum Assumption {
        /** The container is filled to its mark from empty, with no splash lost. */
        FILLED_TO_THE_MARK,
        /** The flow is steady while it is timed; the lift hardly changes. */
        STEADY_FLOW,
        /** The walls are plumb between the two marks, clear of any taper. */
        STRAIGHT_WALLS,
        /** The inflow during the test is the mean of the inflows measured with the pump off, at the same marks. */
        SAME_INFLOW,
        /** No inflow was measured: it is taken as none. */
        NO_INFLOW,
        /** No water ran back from the riser while the inflow was measured. */
        NO_FLOW_BACK,
        /** The meter runs full. */
        METER_RUNS_FULL,
        /** Ten bores of straight pipe before the meter and five after it. */
        STRAIGHT_RUN,
        /** The pipe is level and full to its end, the jet unbroken, air drag small. */
        LEVEL_FULL_PIPE
    }

    /**
     * A rise or fall of level that was timed.
     *
     * @param changeM between the two marks, m, taken positive
     * @param seconds time between the marks, s
     */
    public record LevelChange(double changeM, double seconds) {}

    private static final double LONGEST_S = 1e6;
    private static final int MOST_REPEATS = 100;
    private static final double LARGEST_AREA_M2 = 1e6;

    /**
     * A container filled to its mark; flow = volume over mean time. The standard uncertainty of the time is the larger of the
     * stopwatch's and s/sqrt n of the repeats.
     *
     * @param containerL volume, 0.01 to 1 000 000 L (or a meter's total over the time)
     * @param containerUncertaintyL its standard uncertainty, 0 L to the volume
     * @param seconds 1 to 100 times, each 0.1 to 1 000 000 s
     * @param timingUncertaintyS standard uncertainty of one time, 0 s to the mean time
     */
    public static MeasuredFlow timedContainer(
            double containerL, double containerUncertaintyL, List<Double> seconds, double timingUncertaintyS) {
        OutOfRange.check("containerL", containerL, "L", 0.01, 1e6);
        OutOfRange.check("containerUncertaintyL", containerUncertaintyL, "L", 0, containerL);
        int n = seconds.size();
        OutOfRange.checkCount("seconds", n, "times", 1, MOST_REPEATS);
        double sum = 0;
        for (int i = 0; i < n; i++) {
            sum += OutOfRange.check("seconds[" + i + "]", seconds.get(i), "s", 0.1, LONGEST_S);
        }
        double mean = sum / n;
        OutOfRange.check("timingUncertaintyS", timingUncertaintyS, "s", 0, mean);
        double squares = 0;
        for (double s : seconds) {
            squares += (s - mean) * (s - mean);
        }
        double deviation = n > 1 ? Math.sqrt(squares / (n - 1)) : 0;
        double scatter = deviation / Math.sqrt(n);
        double flow = 3.6 * containerL / mean;
        OutOfRange.check("containerL", flow, "m³/h as a flow", 0, LineLoss.HIGHEST_FLOW_M3H);
        return new MeasuredFlow(
                Method.TIMED_CONTAINER,
                flow,
                flow * Math.hypot(containerUncertaintyL / containerL, Math.max(timingUncertaintyS, scatter) / mean),
                scatter > timingUncertaintyS ? flow * scatter / mean : 0,
                n,
                n > 1 ? Double.valueOf(deviation / mean) : null,
                mean,
                List.of(Assumption.FILLED_TO_THE_MARK, Assumption.STEADY_FLOW));
    }

    /**
     * The fall of level in a pit that the pump empties, corrected for what runs in; flow = net area x (fall/time + mean of
     * rise/time with the pump off). The area acts on both terms alike.
     *
     * @param areaM2 plan area between the marks, 0.0001 to 1 000 000 m²
     * @param areaUncertaintyFraction standard uncertainty of the area over the area, 0 to 1; for a round pit twice that of the
     *     diameter over the diameter
     * @param displacedFraction share of the area taken up by pump and pipes, 0 to 0.9
     * @param drop fall while pumping: 0.001 to 1000 m in 0.1 to 1 000 000 s
     * @param inflows 0 to 10 rises with the pump off (before and after), 0 to 1000 m each in 0.1 to 1 000 000 s
     * @param levelUncertaintyM standard uncertainty of reading one level, 0 to 1 m
     * @param timingUncertaintyS standard uncertainty of one time, 0 to 60 s
     */
    public static MeasuredFlow levelDrop(
            double areaM2,
            double areaUncertaintyFraction,
            double displacedFraction,
            LevelChange drop,
            List<LevelChange> inflows,
            double levelUncertaintyM,
            double timingUncertaintyS) {
        OutOfRange.check("areaM2", areaM2, "m²", 1e-4, LARGEST_AREA_M2);
        OutOfRange.check("areaUncertaintyFraction", areaUncertaintyFraction, "", 0, 1);
        OutOfRange.check("displacedFraction", displacedFraction, "", 0, 0.9);
        OutOfRange.check("drop.changeM", drop.changeM(), "m", 1e-3, 1000);
        OutOfRange.check("drop.seconds", drop.seconds(), "s", 0.1, LONGEST_S);
        OutOfRange.check("levelUncertaintyM", levelUncertaintyM, "m", 0, 1);
        OutOfRange.check("timingUncertaintyS", timingUncertaintyS, "s", 0, 60);
        int n = inflows.size();
        OutOfRange.checkCount("inflows", n, "rises", 0, 10);
        double speed = drop.changeM() / drop.seconds();
        double variance = speedVariance(drop, levelUncertaintyM, timingUncertaintyS);
        for (int i = 0; i < n; i++) {
            LevelChange rise = inflows.get(i);
            OutOfRange.check("inflows[" + i + "].changeM", rise.changeM(), "m", 0, 1000);
            OutOfRange.check("inflows[" + i + "].seconds", rise.seconds(), "s", 0.1, LONGEST_S);
            speed += rise.changeM() / rise.seconds() / n;
            variance += speedVariance(rise, levelUncertaintyM, timingUncertaintyS) / n / n;
        }
        double net = 3600 * areaM2 * (1 - displacedFraction);
        double flow = OutOfRange.check("areaM2", net * speed, "m³/h as a flow", 0, LineLoss.HIGHEST_FLOW_M3H);
        return new MeasuredFlow(
                Method.LEVEL_DROP,
                flow,
                Math.hypot(flow * areaUncertaintyFraction, net * Math.sqrt(variance)),
                0,
                1,
                null,
                drop.seconds(),
                n > 0
                        ? List.of(
                                Assumption.STRAIGHT_WALLS,
                                Assumption.STEADY_FLOW,
                                Assumption.SAME_INFLOW,
                                Assumption.NO_FLOW_BACK)
                        : List.of(Assumption.STRAIGHT_WALLS, Assumption.STEADY_FLOW, Assumption.NO_INFLOW));
    }

    /** Two level readings and two strokes of the watch go into a change; the watch's are one uncertainty of the time. */
    private static double speedVariance(LevelChange change, double levelUncertaintyM, double timingUncertaintyS) {
        double byLevel = Math.sqrt(2) * levelUncertaintyM / change.seconds();
        double byTime = change.changeM() / change.seconds() * timingUncertaintyS / change.seconds();
        return byLevel * byLevel + byTime * byTime;
    }

    /**
     * A flow meter's reading.
     *
     * @param flowM3h reading, 0.000001 to 100 000 m³/h
     * @param ofReadingFraction standard uncertainty in proportion to the reading, 0 to 1
     * @param fixedM3h standard uncertainty that does not depend on the reading (last digit, zero), 0 m³/h to the reading
     */
    public static MeasuredFlow meter(double flowM3h, double ofReadingFraction, double fixedM3h) {
        OutOfRange.check("flowM3h", flowM3h, "m³/h", 1e-6, LineLoss.HIGHEST_FLOW_M3H);
        OutOfRange.check("ofReadingFraction", ofReadingFraction, "", 0, 1);
        OutOfRange.check("fixedM3h", fixedM3h, "m³/h", 0, flowM3h);
        return new MeasuredFlow(
                Method.METER,
                flowM3h,
                Math.hypot(flowM3h * ofReadingFraction, fixedM3h),
                0,
                1,
                null,
                null,
                List.of(Assumption.METER_RUNS_FULL, Assumption.STRAIGHT_RUN, Assumption.STEADY_FLOW));
    }

    /** Usual standard uncertainty of the trajectory method itself: half of the ±10 % of common practice, no source. */
    public static final double TRAJECTORY_UNCERTAINTY = 0.05;

    /**
     * The jet from a level pipe that runs full: it leaves at reach x sqrt(g/(2 fall)), a body in free fall, through the whole
     * bore.
     *
     * @param boreMm inside bore of the pipe, 0.5 to 5000 mm
     * @param reachM horizontal distance from the pipe's end, 0.01 to 100 m
     * @param fallM fall of the jet over that distance, from the same point of the jet, 0.01 to 100 m
     * @param lengthUncertaintyM standard uncertainty of each of the two lengths, 0 to 1 m
     * @param methodUncertaintyFraction standard uncertainty of the method, 0 to 1; usually {@link #TRAJECTORY_UNCERTAINTY}
     */
    public static MeasuredFlow trajectory(
            double boreMm, double reachM, double fallM, double lengthUncertaintyM, double methodUncertaintyFraction) {
        OutOfRange.check("boreMm", boreMm, "mm", Section.LOWEST_BORE_MM, Section.HIGHEST_BORE_MM);
        OutOfRange.check("reachM", reachM, "m", 0.01, 100);
        OutOfRange.check("fallM", fallM, "m", 0.01, 100);
        OutOfRange.check("lengthUncertaintyM", lengthUncertaintyM, "m", 0, 1);
        OutOfRange.check("methodUncertaintyFraction", methodUncertaintyFraction, "", 0, 1);
        double area = Math.PI / 4 * boreMm * boreMm * 1e-6;
        double computed = 3600 * area * reachM * Math.sqrt(Water.GRAVITY_MS2 / (2 * fallM));
        double flow = OutOfRange.check("boreMm", computed, "m³/h as a flow", 0, LineLoss.HIGHEST_FLOW_M3H);
        double byLengths = Math.hypot(lengthUncertaintyM / reachM, lengthUncertaintyM / (2 * fallM));
        return new MeasuredFlow(
                Method.TRAJECTORY,
                flow,
                flow * Math.hypot(byLengths, methodUncertaintyFraction),
                0,
                1,
                null,
                null,
                List.of(Assumption.LEVEL_FULL_PIPE, Assumption.STEADY_FLOW));
    }
}
