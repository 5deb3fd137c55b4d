package freshet.jobs;

import org.jspecify.annotations.Nullable;

/**
 * What a job asks for.
 *
 * @param wantedM3h the flow that is wanted, m³/h, above 0
 * @param volumeL to be pumped out, L; null when there is only a flow
 * @param inflowM3h what runs in meanwhile, m³/h
 * @param areaM2 plan area of the water; null when it is not known, and the lift is taken to stay as it is
 * @param solidsMm the worst solid that may come; null when nobody said
 * @param liquidC the liquid's temperature as typed; null when nobody said
 */
record Job(
        JobLine line,
        double wantedM3h,
        @Nullable Double volumeL,
        double inflowM3h,
        @Nullable Double areaM2,
        @Nullable Double solidsMm,
        @Nullable Double liquidC,
        @Nullable Cord cord,
        @Nullable Suction suction) {

    /** The cord between the outlet in the wall and the pump; volts and amps are null when the pump's plate is to say them. */
    record Cord(
            CordSize size,
            double lengthM,
            @Nullable Double volts,
            @Nullable Double amps) {}

    /** A pump that stands above the water: how far, and how high above the sea, m. */
    record Suction(double liftM, double altitudeM) {}

    /** How deep the water stands above where it is to stop, m; null when its area is not known. */
    public @Nullable Double depthM() {
        return areaM2 == null || volumeL == null ? null : volumeL / 1000 / areaM2;
    }
}
