package freshet.hydraulics;

import org.jspecify.annotations.Nullable;

/**
 * Divides the flow that is missing on a job between the line and the pump.
 *
 * @param ratedFlowM3h what the reference pump gives on the rated (bare or full-bore) line, m³/h
 * @param expectedFlowM3h what the reference pump would give on the line used, m³/h
 * @param lostToLineM3h rated less expected; below 0 when the line used is the easier one, m³/h
 * @param lostToPumpM3h expected less measured; below 0 when the pump gives more than its reference, m³/h
 * @param shareOfLine what is lost to the line over all that is lost; null when nothing is lost in all
 */
public record PumpOrLine(
        double ratedFlowM3h,
        double expectedFlowM3h,
        double lostToLineM3h,
        double lostToPumpM3h,
        @Nullable Double shareOfLine) {

    /**
     * Divides the loss.
     *
     * @param reference the pump as rated, or as first tested
     * @param ratedLine the line it is rated on
     * @param usedLine the line of the job
     * @param measuredFlowM3h measured on the line used, 0 to 100 000 m³/h
     * @throws OutOfRange when a line takes more than the curve's last point gives
     */
    public static PumpOrLine of(Curve reference, Line ratedLine, Line usedLine, double measuredFlowM3h) {
        OutOfRange.check("measuredFlowM3h", measuredFlowM3h, "m³/h", 0, LineLoss.HIGHEST_FLOW_M3H);
        double rated = flow("ratedLine", reference, ratedLine);
        double expected = flow("usedLine", reference, usedLine);
        double lost = rated - measuredFlowM3h;
        return new PumpOrLine(
                rated,
                expected,
                rated - expected,
                expected - measuredFlowM3h,
                lost > 0 && Double.isFinite((rated - expected) / lost)
                        ? Double.valueOf((rated - expected) / lost)
                        : null);
    }

    private static double flow(String field, Curve reference, Line line) {
        double flow = DutyPoint.solve(reference, new Losses(line), line.liftM());
        if (flow == DutyPoint.BEYOND) {
            throw DutyPoint.beyond(field, reference, line.liftM());
        }
        return flow;
    }
}
