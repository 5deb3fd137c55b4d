package freshet.pumps;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import org.jspecify.annotations.Nullable;

/**
 * What a model's plate and sheet say besides its curve; {@code dutyValue} is minutes for S2 and percent of the time for S3,
 * {@code speedRpm} the speed at which the rated curve holds.
 */
@Embeddable
public record Ratings(
        @Column(name = "voltage_v") @Nullable Double voltageV,
        @Column(name = "frequency_hz") @Nullable Double frequencyHz,
        @Column(name = "current_a") @Nullable Double currentA,
        @Column(name = "power_w") @Nullable Double powerW,
        @Enumerated(EnumType.STRING) @Nullable Duty duty,
        @Nullable Double dutyValue,
        @Nullable Double maxStartsPerHour,
        @Nullable Double minRunMinutesPerStart,
        @Column(name = "inlet_mm") @Nullable Double inletMm,
        @Column(name = "outlet_mm") @Nullable Double outletMm,
        @Column(name = "solids_mm") @Nullable Double solidsMm,
        @Column(name = "max_liquid_c") @Nullable Double maxLiquidC,
        @Column(name = "speed_rpm") @Nullable Double speedRpm) {

    /** Those of a model whose rated speed is not known. */
    public Ratings(
            @Nullable Double voltageV,
            @Nullable Double frequencyHz,
            @Nullable Double currentA,
            @Nullable Double powerW,
            @Nullable Duty duty,
            @Nullable Double dutyValue,
            @Nullable Double maxStartsPerHour,
            @Nullable Double minRunMinutesPerStart,
            @Nullable Double inletMm,
            @Nullable Double outletMm,
            @Nullable Double solidsMm,
            @Nullable Double maxLiquidC) {
        this(
                voltageV,
                frequencyHz,
                currentA,
                powerW,
                duty,
                dutyValue,
                maxStartsPerHour,
                minRunMinutesPerStart,
                inletMm,
                outletMm,
                solidsMm,
                maxLiquidC,
                null);
    }

    /** Nothing is known. */
    public static final Ratings NONE =
            new Ratings(null, null, null, null, null, null, null, null, null, null, null, null);
}
