package freshet.hydraulics;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a line takes at one flow; head = lift + friction + fittings + exit.
 *
 * @param headM lift and all losses, m
 * @param liftM the line's lift, m
 * @param frictionM friction in all sections, m
 * @param fittingsM fittings and changes of bore, m
 * @param exitM velocity head lost at the end, m
 * @param sections in flow order
 */
public record LineLoss(
        double headM, double liftM, double frictionM, double fittingsM, double exitM, List<SectionFlow> sections) {

    /** Highest flow answered anywhere in this room, m³/h. */
    public static final double HIGHEST_FLOW_M3H = 100_000;

    /**
     * The flow in one section.
     *
     * @param velocityMs mean velocity, m/s
     * @param reynolds Reynolds number
     * @param frictionFactor Darcy factor; null where there is none: in a Hazen-Williams section and in still water
     * @param lossM all that is lost in the section: friction, its fittings, and the change of bore at its inlet, m
     * @param frictionM the friction alone, m
     * @param fittingsM its fittings and the change of bore at its inlet, m
     */
    public record SectionFlow(
            double velocityMs,
            double reynolds,
            @Nullable Double frictionFactor,
            double lossM,
            double frictionM,
            double fittingsM) {}

    /**
     * The loss of a line by Darcy-Weisbach (or Hazen-Williams, h = 10.67 L Q^1.852/(C^1.852 d^4.8704), SI, where a section says
     * so).
     *
     * @param flowM3h flow, 0 to 100 000 m³/h
     * @throws OutOfRange outside that range
     */
    public static LineLoss of(Line line, double flowM3h) {
        double flow = OutOfRange.check("flowM3h", flowM3h, "m³/h", 0, HIGHEST_FLOW_M3H);
        return of(line, new Losses(line), flow);
    }

    static LineLoss of(Line line, Losses losses, double flow) {
        int n = line.sections().size();
        List<SectionFlow> parts = new ArrayList<>(n);
        double friction = 0;
        for (int i = 0; i < n; i++) {
            SectionFlow part = losses.section(i, flow);
            friction += part.frictionM();
            parts.add(part);
        }
        double fittings = losses.fittingsAt(flow);
        double exit = losses.exitAt(flow);
        return new LineLoss(
                line.liftM() + friction + fittings + exit, line.liftM(), friction, fittings, exit, List.copyOf(parts));
    }
}
