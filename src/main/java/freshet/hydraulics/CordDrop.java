package freshet.hydraulics;

/**
 * Voltage lost in an extension cord: twice the length (root three times for three phases) x current x copper's resistance.
 * Copper 1/58 ohm mm²/m at 20 °C and 0.00393 per kelvin: IEC 60028, annealed copper, from memory. Reactance is left out: it
 * is small in cords up to about 16 mm².
 *
 * @param dropV volts lost in the cord
 * @param dropFraction of the supply's voltage
 * @param voltsAtPump left at the pump
 * @param resistanceOhmPerM of one conductor
 */
public record CordDrop(double dropV, double dropFraction, double voltsAtPump, double resistanceOhmPerM) {

    /** Usual limit of the drop in a cord as a part of the supply; common practice, no source. */
    public static final double USUAL_LIMIT = 0.05;

    private static final double COPPER_OHM_MM2_PER_M = 1 / 58.0;
    private static final double PER_KELVIN = 0.00393;

    /** How the pump is fed. */
    public enum Phases {
        SINGLE(2),
        THREE(Math.sqrt(3));

        private final double lengths;

        Phases(double lengths) {
            this.lengths = lengths;
        }
    }

    /**
     * The drop in a copper cord.
     *
     * @param supplyV at the outlet, 10 to 1000 V
     * @param amps running current, 0 to 500 A
     * @param lengthM of the cord, one way, 0 to 2000 m
     * @param conductorMm2 copper section of one conductor, 0.2 to 400 mm²
     * @param conductorC temperature of the copper, -40 to 120 °C; 20 for a cord lying out, more on a reel
     * @param phases how the pump is fed
     * @throws OutOfRange for these, and when the drop would reach the supply's voltage
     */
    public static CordDrop of(
            double supplyV, double amps, double lengthM, double conductorMm2, double conductorC, Phases phases) {
        OutOfRange.check("supplyV", supplyV, "V", 10, 1000);
        OutOfRange.check("amps", amps, "A", 0, 500);
        OutOfRange.check("lengthM", lengthM, "m", 0, 2000);
        OutOfRange.check("conductorMm2", conductorMm2, "mm²", 0.2, 400);
        OutOfRange.check("conductorC", conductorC, "°C", -40, 120);
        double perM = COPPER_OHM_MM2_PER_M * (1 + PER_KELVIN * (conductorC - 20)) / conductorMm2;
        double drop = phases.lengths * lengthM * perM * amps;
        if (drop >= supplyV) {
            throw new OutOfRange(
                    "lengthM",
                    OutOfRange.Reason.RANGE,
                    "a cord of " + OutOfRange.show(lengthM, "m") + " and " + OutOfRange.show(conductorMm2, "mm²")
                            + " cannot carry " + OutOfRange.show(amps, "A") + ": it would lose all of "
                            + OutOfRange.show(supplyV, "V"));
        }
        return new CordDrop(drop, drop / supplyV, supplyV - drop, perM);
    }

    /**
     * Section of an American wire gauge, mm²: diameter 0.127 mm x 92^((36 - gauge)/39). Source: ASTM B258, from memory.
     *
     * @param gauge 0 to 24; 2/0, 3/0 and 4/0 are -1, -2 and -3
     */
    public static double awgMm2(int gauge) {
        OutOfRange.check("gauge", gauge, "AWG", -3, 24);
        double diameter = 0.127 * Math.pow(92, (36 - gauge) / 39.0);
        return Math.PI / 4 * diameter * diameter;
    }
}
