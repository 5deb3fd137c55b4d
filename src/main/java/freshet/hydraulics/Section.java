package freshet.hydraulics;

import org.jspecify.annotations.Nullable;

/**
 * One length of hose or pipe of one bore; a plain carrier, checked by the {@link Line} that holds it.
 *
 * @param innerDiameterMm bore, 0.5 to 5000 mm
 * @param lengthM length, 0 to 100 000 m (0: an adapter that only changes the bore)
 * @param roughnessMm wall roughness for Darcy-Weisbach, from 0 mm to half the bore; null when Hazen-Williams is used
 * @param hazenWilliamsC Hazen-Williams coefficient, 10 to 200, in place of the roughness; else null
 * @param lossCoefficient sum of K of the fittings in it, on its own velocity head, 0 to 1 000 000
 */
public record Section(
        double innerDiameterMm,
        double lengthM,
        @Nullable Double roughnessMm,
        @Nullable Double hazenWilliamsC,
        double lossCoefficient) {

    /** Limits shared with the other bores of the room, mm. */
    static final double LOWEST_BORE_MM = 0.5;

    static final double HIGHEST_BORE_MM = 5000;
    static final double HIGHEST_LOSS_COEFFICIENT = 1e6;

    /** A section whose friction follows Darcy-Weisbach. */
    public static Section rough(double innerDiameterMm, double lengthM, double roughnessMm, double lossCoefficient) {
        return new Section(innerDiameterMm, lengthM, roughnessMm, null, lossCoefficient);
    }

    /** A section whose friction follows Hazen-Williams. */
    public static Section hazenWilliams(double innerDiameterMm, double lengthM, double c, double lossCoefficient) {
        return new Section(innerDiameterMm, lengthM, null, c, lossCoefficient);
    }

    void check() {
        OutOfRange.check("innerDiameterMm", innerDiameterMm, "mm", LOWEST_BORE_MM, HIGHEST_BORE_MM);
        OutOfRange.check("lengthM", lengthM, "m", 0, 100_000);
        if (roughnessMm != null && hazenWilliamsC != null) {
            throw new OutOfRange(
                    "hazenWilliamsC",
                    OutOfRange.Reason.CONFLICT,
                    "hazenWilliamsC is " + OutOfRange.show(hazenWilliamsC, "") + " and roughnessMm "
                            + OutOfRange.show(roughnessMm, "mm") + "; a section takes one of the two");
        }
        if (roughnessMm != null) {
            OutOfRange.check("roughnessMm", roughnessMm, "mm", 0, FrictionFactor.HIGHEST_ROUGHNESS * innerDiameterMm);
        } else if (hazenWilliamsC != null) {
            OutOfRange.check("hazenWilliamsC", hazenWilliamsC, "", 10, 200);
        } else {
            throw new OutOfRange(
                    "roughnessMm",
                    OutOfRange.Reason.MISSING,
                    "roughnessMm is not given, nor is hazenWilliamsC; a section needs one of the two");
        }
        OutOfRange.check("lossCoefficient", lossCoefficient, "", 0, HIGHEST_LOSS_COEFFICIENT);
    }
}
