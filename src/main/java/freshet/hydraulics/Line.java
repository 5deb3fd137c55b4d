package freshet.hydraulics;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the pump has to push through: the lift and the hoses, pipes and adapters in flow order.
 *
 * <p>Between bores that differ (and from the pump's outlet into the first section) a sudden contraction
 * K = 0.5(1 - b²) or a sudden expansion K = (1 - b²)² is counted, b the smaller bore over the larger, both on the velocity
 * in the smaller bore. Sources: the contraction as in Crane TP-410, appendix A (from memory); the expansion from the
 * momentum balance (Borda-Carnot), any textbook.
 *
 * @param liftM discharge point above the water surface, -500 to 5000 m; negative for a siphon or a downhill run
 * @param waterTemperatureC 0 to 60 °C
 * @param pumpOutletMm bore at the pump's outlet, 0.5 to 5000 mm; null when unknown: no change of bore is counted there
 * @param exitLossCoefficient velocity heads lost at the free end, on the last section's velocity (the outlet's when there is
 *     no section), 0 to 1 000 000; usually 1
 * @param sections 0 to 20
 */
public record Line(
        double liftM,
        double waterTemperatureC,
        @Nullable Double pumpOutletMm,
        double exitLossCoefficient,
        List<Section> sections) {

    /** Water temperature taken when none is known, °C. */
    public static final double USUAL_TEMPERATURE_C = 15;
    /** Exit loss coefficient of a free end: the whole velocity head, by definition. */
    public static final double FREE_END = 1.0;
    /** Most sections that a line may have. */
    public static final int MOST_SECTIONS = 20;

    private static final double LOWEST_LIFT_M = -500;
    private static final double HIGHEST_LIFT_M = 5000;

    /** @throws OutOfRange with the path of the first value that is refused */
    public Line {
        liftM = OutOfRange.check("liftM", liftM, "m", LOWEST_LIFT_M, HIGHEST_LIFT_M);
        Water.checkTemperature("waterTemperatureC", waterTemperatureC);
        if (pumpOutletMm != null) {
            OutOfRange.check("pumpOutletMm", pumpOutletMm, "mm", Section.LOWEST_BORE_MM, Section.HIGHEST_BORE_MM);
        }
        OutOfRange.check("exitLossCoefficient", exitLossCoefficient, "", 0, Section.HIGHEST_LOSS_COEFFICIENT);
        sections = List.copyOf(sections);
        OutOfRange.checkCount("sections", sections.size(), "sections", 0, MOST_SECTIONS);
        for (int i = 0; i < sections.size(); i++) {
            try {
                sections.get(i).check();
            } catch (OutOfRange refused) {
                throw refused.under("sections[" + i + "]");
            }
        }
    }

    /** A line with a free end, water at 15 °C and no pump outlet known. */
    public static Line of(double liftM, Section... sections) {
        return new Line(liftM, USUAL_TEMPERATURE_C, null, FREE_END, List.of(sections));
    }

    /** The same line at another lift, m. */
    public Line withLift(double newLiftM) {
        return new Line(newLiftM, waterTemperatureC, pumpOutletMm, exitLossCoefficient, sections);
    }

    /**
     * K of a sudden change of bore, on the velocity head of the smaller bore; 0 when the bores are equal.
     *
     * @param fromMm bore upstream, 0.5 to 5000 mm
     * @param toMm bore downstream, 0.5 to 5000 mm
     */
    public static double boreChangeCoefficient(double fromMm, double toMm) {
        OutOfRange.check("fromMm", fromMm, "mm", Section.LOWEST_BORE_MM, Section.HIGHEST_BORE_MM);
        OutOfRange.check("toMm", toMm, "mm", Section.LOWEST_BORE_MM, Section.HIGHEST_BORE_MM);
        double beta = Math.min(fromMm, toMm) / Math.max(fromMm, toMm);
        double closed = 1 - beta * beta;
        return toMm < fromMm ? 0.5 * closed : closed * closed;
    }
}
