package freshet.hydraulics;

/**
 * The affinity laws for one pump at two speeds (or, roughly, two impeller diameters): flow goes with the ratio, head with its
 * square, power with its cube. Source: DOE-HDBK-1012/3-92, Fluid Flow, p. 50.
 *
 * @param ratio new over old, 0.05 to 20
 */
public record Affinity(double ratio) {

    /** @throws OutOfRange outside 0.05 to 20 */
    public Affinity {
        OutOfRange.check("speedRatio", ratio, "", 0.05, 20);
    }

    /**
     * From a tachometer.
     *
     * @param newRpm 1 to 100 000 rpm
     * @param oldRpm 1 to 100 000 rpm
     */
    public static Affinity ofSpeeds(double newRpm, double oldRpm) {
        OutOfRange.check("newRpm", newRpm, "rpm", 1, 100_000);
        OutOfRange.check("oldRpm", oldRpm, "rpm", 1, 100_000);
        return new Affinity(newRpm / oldRpm);
    }

    /**
     * An induction motor on another frequency, with the same relative slip.
     *
     * @param newHz 10 to 400 Hz
     * @param oldHz 10 to 400 Hz
     */
    public static Affinity ofFrequencies(double newHz, double oldHz) {
        OutOfRange.check("newHz", newHz, "Hz", 10, 400);
        OutOfRange.check("oldHz", oldHz, "Hz", 10, 400);
        return new Affinity(newHz / oldHz);
    }

    /**
     * An induction motor on a voltage other than its rated one: near full load the slip goes about with the inverse square of
     * the voltage at the same torque (common practice, from the torque law of induction motors; no source for the small
     * single-phase motors of this trade, and the torque falls as the pump slows, so the true change is a little smaller).
     *
     * @param volts volts at the motor, 70 % to 130 % of rated
     * @param ratedVolts 1 to 1000 V
     * @param ratedSlip (synchronous speed - rated speed)/synchronous speed, 0.001 to 0.2
     */
    public static Affinity ofVoltages(double volts, double ratedVolts, double ratedSlip) {
        OutOfRange.check("ratedVolts", ratedVolts, "V", 1, 1000);
        OutOfRange.check("volts", volts, "V", 0.7 * ratedVolts, 1.3 * ratedVolts);
        OutOfRange.check("ratedSlip", ratedSlip, "", 1e-3, 0.2);
        double over = ratedVolts / volts;
        return new Affinity((1 - ratedSlip * over * over) / (1 - ratedSlip));
    }

    /** The way back. */
    public Affinity inverse() {
        return new Affinity(1 / ratio);
    }

    /** Flow at the new speed, in the unit given. */
    public double flow(double flow) {
        return flow * ratio;
    }

    /** Head at the new speed, in the unit given. */
    public double head(double head) {
        return head * ratio * ratio;
    }

    /** Power at the new speed, in the unit given. */
    public double power(double power) {
        return power * ratio * ratio * ratio;
    }

    /** The curve at the new speed, point by point; a duty point must then be sought anew, never scaled itself. */
    public Curve curve(Curve curve) {
        return curve.scaled(ratio, ratio * ratio);
    }
}
