package freshet.readings;

import freshet.hydraulics.MeasuredFlow;
import freshet.hydraulics.MeasuredFlow.LevelChange;
import freshet.hydraulics.MeasuredFlow.Method;
import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What was measured to know the flow where no container was filled. Every uncertainty is a standard one. */
public sealed interface FlowBy {

    Method method();

    /**
     * The flow that follows.
     *
     * @throws freshet.hydraulics.OutOfRange with the name of the value that is refused
     */
    MeasuredFlow flow();

    /**
     * The level in a pit fell while the pump ran; with the pump off it rose again.
     *
     * @param diameterMm of a round pit; null when its area is given
     * @param areaM2 plan area; null when the diameter is given
     * @param areaUncertaintyFraction of the area over the area
     * @param displacedFraction share of the area that pump and pipes take up
     * @param riseBeforeMm how far it rose before the test; null, with its time, when that was not timed
     * @param riseAfterMm how far it rose after the test; null, with its time, when that was not timed
     * @param levelUncertaintyMm of one level
     * @param timingUncertaintyS of one time
     */
    @Embeddable
    record PitFall(
            @Column(name = "pit_diameter_mm") @Nullable Double diameterMm,
            @Column(name = "pit_area_m2") @Nullable Double areaM2,
            @Column(name = "pit_area_u_fraction") double areaUncertaintyFraction,
            @Column(name = "pit_displaced_fraction") double displacedFraction,
            @Column(name = "fall_mm") double fallMm,
            @Column(name = "fall_s") double fallSeconds,
            @Column(name = "rise_before_mm") @Nullable Double riseBeforeMm,
            @Column(name = "rise_before_s") @Nullable Double riseBeforeSeconds,
            @Column(name = "rise_after_mm") @Nullable Double riseAfterMm,
            @Column(name = "rise_after_s") @Nullable Double riseAfterSeconds,
            @Column(name = "level_u_mm") double levelUncertaintyMm,
            @Column(name = "fall_timing_u_s") double timingUncertaintyS)
            implements FlowBy {

        /** Usual standard uncertainty of a pit's area: half of ±4 % (common practice, no source). */
        public static final double USUAL_AREA_UNCERTAINTY = 0.02;
        /** Usual standard uncertainty of one level read at a mark: half of ±6 mm (common practice, no source). */
        public static final double USUAL_LEVEL_UNCERTAINTY_MM = 3;

        @Override
        public Method method() {
            return Method.LEVEL_DROP;
        }

        @Override
        public MeasuredFlow flow() {
            List<LevelChange> inflows = new ArrayList<>();
            if (riseBeforeMm != null && riseBeforeSeconds != null) {
                inflows.add(new LevelChange(riseBeforeMm / 1000, riseBeforeSeconds));
            }
            if (riseAfterMm != null && riseAfterSeconds != null) {
                inflows.add(new LevelChange(riseAfterMm / 1000, riseAfterSeconds));
            }
            return MeasuredFlow.levelDrop(
                    planAreaM2(),
                    areaUncertaintyFraction,
                    displacedFraction,
                    new LevelChange(fallMm / 1000, fallSeconds),
                    inflows,
                    levelUncertaintyMm / 1000,
                    timingUncertaintyS);
        }

        /** A diameter below nothing gives an area below nothing, which is refused. */
        private double planAreaM2() {
            return diameterMm == null
                    ? areaM2 == null ? Double.NaN : areaM2
                    : Math.PI / 4 * 1e-6 * diameterMm * Math.abs(diameterMm);
        }
    }

    /**
     * A flow meter in the line was read.
     *
     * @param ofReadingFraction the part of its uncertainty that goes with the reading
     * @param fixedM3h the part that does not, such as half of its last digit
     */
    @Embeddable
    record LineMeter(
            @Column(name = "line_meter_m3h") double flowM3h,
            @Column(name = "line_meter_u_fraction") double ofReadingFraction,
            @Column(name = "line_meter_u_m3h") double fixedM3h)
            implements FlowBy {

        /** Usual standard uncertainty of a meter in a full line: half of ±3 % (common practice, no source). */
        public static final double USUAL_OF_READING = 0.015;

        @Override
        public Method method() {
            return Method.METER;
        }

        @Override
        public MeasuredFlow flow() {
            return MeasuredFlow.meter(flowM3h, ofReadingFraction, fixedM3h);
        }
    }

    /**
     * The jet from the level end of a pipe that runs full was measured with two rules.
     *
     * @param reachMm from the pipe's end, level
     * @param fallMm of the jet over that reach, from the same point of it
     * @param lengthUncertaintyMm of each of the two
     * @param methodUncertaintyFraction of the method itself
     */
    @Embeddable
    record Jet(
            @Column(name = "jet_bore_mm") double boreMm,
            @Column(name = "jet_reach_mm") double reachMm,
            @Column(name = "jet_fall_mm") double fallMm,
            @Column(name = "jet_length_u_mm") double lengthUncertaintyMm,
            @Column(name = "jet_u_fraction") double methodUncertaintyFraction)
            implements FlowBy {

        /** Usual standard uncertainty of a length held against a jet: half of ±20 mm (common practice, no source). */
        public static final double USUAL_LENGTH_UNCERTAINTY_MM = 10;

        @Override
        public Method method() {
            return Method.TRAJECTORY;
        }

        @Override
        public MeasuredFlow flow() {
            return MeasuredFlow.trajectory(
                    boreMm, reachMm / 1000, fallMm / 1000, lengthUncertaintyMm / 1000, methodUncertaintyFraction);
        }
    }
}
