package freshet.hydraulics;

import java.util.List;

/**
 * Kinds of hose and pipe with the wall roughness that goes into Darcy-Weisbach. Pipe figures are those printed with the chart
 * of Moody, Trans. ASME 66 (1944) 671, from memory; hose figures are common practice, no source: hoses differ, stretch and
 * kink, and a line whose figure matters is better tested.
 */
public enum HoseKind {
    SMOOTH_HOSE(0.0015, Mark.COMMON_PRACTICE),
    RUBBER_LINED_HOSE(0.01, Mark.COMMON_PRACTICE),
    LAY_FLAT_HOSE(0.05, Mark.COMMON_PRACTICE),
    ROUGH_HOSE(0.1, Mark.COMMON_PRACTICE),
    RIBBED_SUCTION_HOSE(0.5, Mark.COMMON_PRACTICE),
    PLASTIC_PIPE(0.0015, Mark.FROM_MEMORY),
    COPPER_TUBE(0.0015, Mark.FROM_MEMORY),
    STEEL_PIPE(0.045, Mark.FROM_MEMORY),
    GALVANISED_PIPE(0.15, Mark.FROM_MEMORY),
    CAST_IRON_PIPE(0.26, Mark.FROM_MEMORY);

    /** Bores of hoses in the trade, 1/2 to 6 in by name, mm; an inch is 25.4 mm exactly. */
    public static final List<Double> USUAL_BORES_MM =
            List.of(12.7, 15.875, 19.05, 25.4, 31.75, 38.1, 50.8, 63.5, 76.2, 101.6, 152.4);

    private final double roughnessMm;
    private final Mark mark;

    HoseKind(double roughnessMm, Mark mark) {
        this.roughnessMm = roughnessMm;
        this.mark = mark;
    }

    /** Wall roughness, mm. */
    public double roughnessMm() {
        return roughnessMm;
    }

    /** How far the figure can be trusted. */
    public Mark mark() {
        return mark;
    }

    /** A section of this kind. */
    public Section section(double boreMm, double lengthM, double lossCoefficient) {
        return Section.rough(boreMm, lengthM, roughnessMm, lossCoefficient);
    }
}
