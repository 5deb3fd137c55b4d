package freshet.hydraulics;

import org.jspecify.annotations.Nullable;

/**
 * How often a pump on a float starts: T = V/q + V/(Q - q), shortest (4V/Q) when the inflow is half the pump's flow. Source:
 * MIL-HDBK-1005/9A, 2.5.3.6, equations 1 and 2.
 *
 * @param status whether it cycles
 * @param cycleMinutes fill and run together, min; null unless OK
 * @param startsPerHour null unless OK
 * @param runMinutesPerCycle null unless OK
 * @param worstStartsPerHour the most starts at any inflow
 * @param worstInflowM3h the inflow at which they come, m³/h
 */
public record Cycling(
        Status status,
        @Nullable Double cycleMinutes,
        @Nullable Double startsPerHour,
        @Nullable Double runMinutesPerCycle,
        double worstStartsPerHour,
        double worstInflowM3h) {

    /** Whether a pump cycles. */
    public enum Status {
        OK,
        /** Nothing runs in: it does not start. */
        NO_INFLOW,
        /** The inflow is not below the pump's flow: it does not stop. */
        CANNOT_KEEP_UP
    }

    /**
     * The cycle of a pump between two float marks.
     *
     * @param storageM3 volume between the marks, 0.000001 to 1 000 000 m³
     * @param inflowM3h 0, or 0.000000001 to 100 000 m³/h
     * @param pumpFlowM3h the pump's flow, 0.000001 to 100 000 m³/h
     */
    public static Cycling of(double storageM3, double inflowM3h, double pumpFlowM3h) {
        OutOfRange.check("storageM3", storageM3, "m³", 1e-6, 1e6);
        OutOfRange.check("inflowM3h", inflowM3h, "m³/h", inflowM3h == 0 ? 0 : 1e-9, LineLoss.HIGHEST_FLOW_M3H);
        OutOfRange.check("pumpFlowM3h", pumpFlowM3h, "m³/h", 1e-6, LineLoss.HIGHEST_FLOW_M3H);
        double worstStarts = pumpFlowM3h / (4 * storageM3);
        double worstInflow = pumpFlowM3h / 2;
        if (inflowM3h == 0 || inflowM3h >= pumpFlowM3h) {
            Status status = inflowM3h == 0 ? Status.NO_INFLOW : Status.CANNOT_KEEP_UP;
            return new Cycling(status, null, null, null, worstStarts, worstInflow);
        }
        double run = storageM3 / (pumpFlowM3h - inflowM3h);
        double hours = storageM3 / inflowM3h + run;
        return new Cycling(Status.OK, 60 * hours, 1 / hours, 60 * run, worstStarts, worstInflow);
    }
}
