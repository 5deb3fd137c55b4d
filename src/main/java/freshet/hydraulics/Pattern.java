package freshet.hydraulics;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * What head, flow and current of a running pump read as together, with the likely causes and the next check as keys of a text;
 * common practice, no source. Centrifugal pumps only.
 */
public enum Pattern {
    RESTRICTION_AFTER_GAUGE(
            Set.of(Reading.NORMAL, Reading.HIGH),
            Set.of(Reading.LOW),
            Set.of(Reading.LOW, Reading.NORMAL),
            "bare-test",
            "hose",
            "check-valve",
            "blocked-discharge",
            "closed-valve",
            "more-lift"),
    WEAK_PUMP(
            Set.of(Reading.LOW),
            Set.of(Reading.LOW),
            Set.of(Reading.LOW),
            "strainer",
            "blocked-impeller",
            "worn-impeller",
            "low-speed",
            "air",
            "wrong-rotation"),
    BLOCKED_SUCTION(
            Set.of(Reading.LOW),
            Set.of(Reading.LOW),
            Set.of(Reading.LOW),
            "suction-gauge",
            "strainer",
            "suction-hose",
            "foot-valve",
            "suction-lift"),
    RUBBING(
            Set.of(Reading.LOW),
            Set.of(Reading.LOW),
            Set.of(Reading.HIGH),
            "turn-by-hand",
            "jam",
            "rubbing",
            "bearing",
            "wrong-rotation",
            "low-volts"),
    END_OF_CURVE(
            Set.of(Reading.LOW),
            Set.of(Reading.HIGH),
            Set.of(Reading.HIGH),
            "throttle",
            "burst-hose",
            "no-static-head"),
    MOTOR_LOADED(
            Set.of(Reading.NORMAL),
            Set.of(Reading.NORMAL),
            Set.of(Reading.HIGH),
            "volts-at-load",
            "low-volts",
            "winding",
            "bearing",
            "thick-liquid"),
    NO_PRIME(
            Set.of(Reading.NONE),
            Set.of(Reading.NONE),
            Set.of(Reading.NONE, Reading.LOW),
            "prime",
            "not-primed",
            "air-lock",
            "dry",
            "impeller-loose"),
    SEIZED(
            Set.of(Reading.NONE),
            Set.of(Reading.NONE),
            Set.of(Reading.LOCKED, Reading.HIGH),
            "turn-by-hand",
            "seized",
            "jam"),
    UNSTEADY(
            Set.of(Reading.UNSTEADY),
            Set.of(Reading.UNSTEADY),
            Set.of(Reading.UNSTEADY),
            "water-level",
            "air-leak",
            "vortex",
            "low-water",
            "cavitation"),
    AS_IT_SHOULD(Set.of(Reading.NORMAL), Set.of(Reading.NORMAL), Set.of(Reading.NORMAL), "none");

    /** How a value reads against what the curve or the plate says. */
    public enum Reading {
        NONE,
        LOW,
        NORMAL,
        HIGH,
        /** Three to six times the plate's amps. */
        LOCKED,
        UNSTEADY
    }

    private final Set<Reading> head;
    private final Set<Reading> flow;
    private final Set<Reading> amps;
    private final String nextCheck;
    private final List<String> causes;

    Pattern(Set<Reading> head, Set<Reading> flow, Set<Reading> amps, String nextCheck, String... causes) {
        this.head = EnumSet.copyOf(head);
        this.flow = EnumSet.copyOf(flow);
        this.amps = EnumSet.copyOf(amps);
        this.nextCheck = nextCheck;
        this.causes = List.of(causes);
    }

    /** Every pattern that the three readings fit, likeliest first; empty when they fit none. */
    public static List<Pattern> matching(Reading head, Reading flow, Reading amps) {
        return Arrays.stream(values())
                .filter(p -> p.head.contains(head) && p.flow.contains(flow) && p.amps.contains(amps))
                .toList();
    }

    /**
     * A reading from a measured value and the value it should have.
     *
     * @param value measured, 0 to 1e9
     * @param usual what it should be, above 0, in the same unit
     * @param tolerance fraction that still counts as normal, 0 to 0.5
     */
    public static Reading reading(double value, double usual, double tolerance) {
        OutOfRange.check("value", value, "", 0, 1e9);
        OutOfRange.check("usual", usual, "", 1e-9, 1e9);
        OutOfRange.check("tolerance", tolerance, "", 0, 0.5);
        double ratio = value / usual;
        if (ratio < 0.05) {
            return Reading.NONE;
        }
        if (ratio < 1 - tolerance) {
            return Reading.LOW;
        }
        return ratio <= 1 + tolerance ? Reading.NORMAL : ratio < 3 ? Reading.HIGH : Reading.LOCKED;
    }

    /** How the head may read, lowest first. */
    public List<Reading> headReadings() {
        return List.copyOf(head);
    }

    /** How the flow may read, lowest first. */
    public List<Reading> flowReadings() {
        return List.copyOf(flow);
    }

    /** How the current may read, lowest first. */
    public List<Reading> ampsReadings() {
        return List.copyOf(amps);
    }

    /** Keys of the likely causes, commonest first, under {@code hydraulics.cause.}. */
    public List<String> causeKeys() {
        return causes.stream().map(c -> "hydraulics.cause." + c).toList();
    }

    /** Key of the next check, safe and cheap first, under {@code hydraulics.check.}. */
    public String checkKey() {
        return "hydraulics.check." + nextCheck;
    }
}
