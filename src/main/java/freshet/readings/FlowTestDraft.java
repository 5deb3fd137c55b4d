package freshet.readings;

import freshet.hydraulics.MeasuredFlow;
import freshet.hydraulics.Section;
import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A flow test as it was measured. Every uncertainty is a standard one.
 *
 * @param rig the name of the rig; a changed hose is another rig
 * @param container what was filled; null when the flow was measured another way
 * @param seconds the stopwatch's times to the container's mark, 1 to 10; none without a container
 * @param liftM from the water up to the outlet; must be known when there is no gauge
 * @param gauge where the head was read on a gauge; null when it is computed through the line
 * @param heightUncertaintyM of the lift, or of the gauge's height
 * @param pumpOutletMm bore at the pump's outlet, where known
 * @param exitLoss velocity heads lost at the free end, usually 1
 * @param pieces what the water went through, in flow order, 0 to 20
 * @param shutOff what the gauge showed with the valve shut; null when that was not tried
 * @param by what else the flow was measured by; null when a container was filled
 * @param speedRpm the speed that a tachometer showed; null without one
 */
public record FlowTestDraft(
        long unitId,
        Instant at,
        @Nullable String rig,
        @Nullable Container container,
        List<Double> seconds,
        @Nullable Double liftM,
        @Nullable Gauge gauge,
        double heightUncertaintyM,
        double waterC,
        @Nullable Double pumpOutletMm,
        double exitLoss,
        List<Piece> pieces,
        @Nullable Double volts,
        @Nullable Double amps,
        @Nullable Double frequencyHz,
        @Nullable String note,
        @Nullable ShutOff shutOff,
        @Nullable FlowBy by,
        @Nullable Double speedRpm) {

    /** Usual standard uncertainty of one hand-stopped time: half of ±0.5 s (common practice, no source). */
    public static final double USUAL_TIMING_UNCERTAINTY_S = 0.25;
    /** Usual standard uncertainty of a container's mark: half of ±2 % (common practice, no source). */
    public static final double USUAL_CONTAINER_UNCERTAINTY = 0.01;
    /** Usual standard uncertainty of a height by tape: half of ±60 mm (common practice, no source). */
    public static final double USUAL_HEIGHT_UNCERTAINTY_M = 0.03;

    public FlowTestDraft {
        if ((container == null) == (by == null)) {
            throw new IllegalArgumentException("a flow is measured with a container, or else another way");
        }
        at = at.truncatedTo(ChronoUnit.MICROS); // as fine as it is kept
        seconds = List.copyOf(seconds);
        pieces = List.copyOf(pieces);
    }

    /** A test without the valve shut. */
    public FlowTestDraft(
            long unitId,
            Instant at,
            @Nullable String rig,
            Container container,
            List<Double> seconds,
            @Nullable Double liftM,
            @Nullable Gauge gauge,
            double heightUncertaintyM,
            double waterC,
            @Nullable Double pumpOutletMm,
            double exitLoss,
            List<Piece> pieces,
            @Nullable Double volts,
            @Nullable Double amps,
            @Nullable Double frequencyHz,
            @Nullable String note) {
        this(
                unitId,
                at,
                rig,
                container,
                seconds,
                liftM,
                gauge,
                heightUncertaintyM,
                waterC,
                pumpOutletMm,
                exitLoss,
                pieces,
                volts,
                amps,
                frequencyHz,
                note,
                null);
    }

    /** A test with a container, and no tachometer. */
    public FlowTestDraft(
            long unitId,
            Instant at,
            @Nullable String rig,
            Container container,
            List<Double> seconds,
            @Nullable Double liftM,
            @Nullable Gauge gauge,
            double heightUncertaintyM,
            double waterC,
            @Nullable Double pumpOutletMm,
            double exitLoss,
            List<Piece> pieces,
            @Nullable Double volts,
            @Nullable Double amps,
            @Nullable Double frequencyHz,
            @Nullable String note,
            @Nullable ShutOff shutOff) {
        this(
                unitId,
                at,
                rig,
                container,
                seconds,
                liftM,
                gauge,
                heightUncertaintyM,
                waterC,
                pumpOutletMm,
                exitLoss,
                pieces,
                volts,
                amps,
                frequencyHz,
                note,
                shutOff,
                null,
                null);
    }

    /**
     * The flow with its uncertainty.
     *
     * @throws freshet.hydraulics.OutOfRange with the name of the value that is refused
     */
    public MeasuredFlow flow() {
        return container == null
                ? Objects.requireNonNull(by).flow()
                : MeasuredFlow.timedContainer(
                        container.volumeL(), container.volumeUncertaintyL(), seconds, container.timingUncertaintyS());
    }

    /** The same test with its flow measured another way than by a container, and the speed that was read. */
    public FlowTestDraft measuredBy(FlowBy other, @Nullable Double rpm) {
        return new FlowTestDraft(
                unitId,
                at,
                rig,
                null,
                List.of(),
                liftM,
                gauge,
                heightUncertaintyM,
                waterC,
                pumpOutletMm,
                exitLoss,
                pieces,
                volts,
                amps,
                frequencyHz,
                note,
                shutOff,
                other,
                rpm);
    }

    /**
     * What was filled.
     *
     * @param meterFlowM3h what a flow meter in the line showed meanwhile, to compare; null without one
     */
    @Embeddable
    public record Container(
            @Column(name = "container_l") double volumeL,
            @Column(name = "container_u_l") double volumeUncertaintyL,
            @Column(name = "timing_u_s") double timingUncertaintyS,
            @Column(name = "meter_flow_m3h") @Nullable Double meterFlowM3h) {}

    /** A pressure gauge at the pump. */
    @Embeddable
    public record Gauge(
            @Column(name = "gauge_kpa") double kPa,
            @Column(name = "gauge_u_kpa") double uncertaintyKPa,
            @Column(name = "gauge_above_water_m") double aboveWaterM,
            @Column(name = "gauge_bore_mm") double boreMm) {}

    /** The gauge with the valve shut: no water moves, so that the pressure and the gauge's height are the whole head. */
    @Embeddable
    public record ShutOff(
            @Column(name = "shut_off_kpa") double kPa,
            @Column(name = "shut_off_u_kpa") double uncertaintyKPa,
            @Column(name = "shut_off_above_water_m") double aboveWaterM) {}

    /**
     * One piece of the line: a hose, or an adapter or fitting of no length.
     *
     * @param piece what it is, such as {@code SMOOTH_HOSE} or {@code ADAPTER}
     * @param roughnessMm of its wall; null when {@code hazenWilliamsC} is given
     */
    @Embeddable
    public record Piece(
            String piece,
            @Column(name = "inner_diameter_mm") double innerDiameterMm,
            @Column(name = "length_m") double lengthM,
            @Column(name = "roughness_mm") @Nullable Double roughnessMm,
            @Column(name = "hazen_williams_c") @Nullable Double hazenWilliamsC,
            @Column(name = "loss_coefficient") double lossCoefficient) {

        /** It as a part of a line; checked by the line. */
        public Section section() {
            return new Section(innerDiameterMm, lengthM, roughnessMm, hazenWilliamsC, lossCoefficient);
        }
    }
}
