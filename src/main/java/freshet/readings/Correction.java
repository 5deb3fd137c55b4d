package freshet.readings;

import freshet.hydraulics.Affinity;
import freshet.pumps.Drive;
import freshet.pumps.Model;
import freshet.pumps.Ratings;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * In what a test ran otherwise than the reference curve holds, and whether the curve was brought to it before comparing.
 *
 * @param tested what was measured, in rpm, Hz or V; null when it was not
 * @param rated what the model is rated for; null when that is not known
 * @param ratio of the speeds, test over rating: flow goes with it, head with its square; 1 when no correction was made
 */
public record Correction(
        By by,
        boolean made,
        @Nullable Double tested,
        @Nullable Double rated,
        double ratio) {

    /** What differed. */
    public enum By {
        SPEED,
        FREQUENCY,
        VOLTS
    }

    /** Volts that differ by less are not worth a word (common practice, no source). */
    private static final double VOLTS_MAY_DIFFER = 0.02;
    /** Where the rule for volts ends; beyond, another winding or a mix-up is likelier. */
    private static final double LEAST_VOLTS = 0.7;

    private static final double MOST_VOLTS = 1.3;
    private static final double LEAST_SLIP = 0.001;
    private static final double MOST_SLIP = 0.2;

    /** How far off the rating, as a fraction; 0 when either is not known. */
    public double off() {
        return tested == null || rated == null ? 0 : Math.abs(tested / rated - 1);
    }

    /** The end of the key of its message. */
    public String key() {
        return by + (made ? ".made" : tested == null ? ".unread" : ".left");
    }

    /**
     * What a test calls for. A speed that was read stands for frequency and volts too; without one they are taken for themselves.
     *
     * @throws freshet.hydraulics.OutOfRange for a speed or a frequency that no pump turns at
     */
    static List<Correction> of(Model model, FlowTestDraft draft) {
        List<Correction> corrections = new ArrayList<>();
        Ratings ratings = model.ratings();
        Double rpm = draft.speedRpm();
        if (rpm != null && ratings.speedRpm() != null) {
            return List.of(new Correction(
                    By.SPEED,
                    true,
                    rpm,
                    ratings.speedRpm(),
                    Affinity.ofSpeeds(rpm, ratings.speedRpm()).ratio()));
        }
        if (rpm != null || model.drive() == Drive.ENGINE) {
            corrections.add(new Correction(By.SPEED, false, rpm, ratings.speedRpm(), 1));
        }
        Double hertz = draft.frequencyHz();
        boolean otherHertz = hertz != null && ratings.frequencyHz() != null && !hertz.equals(ratings.frequencyHz());
        if (otherHertz) {
            corrections.add(new Correction(
                    By.FREQUENCY,
                    true,
                    hertz,
                    ratings.frequencyHz(),
                    Affinity.ofFrequencies(hertz, ratings.frequencyHz()).ratio()));
        }
        Correction volts = volts(model, draft.volts(), otherHertz);
        if (volts != null) {
            corrections.add(volts);
        }
        return List.copyOf(corrections);
    }

    private static @Nullable Correction volts(Model model, @Nullable Double volts, boolean otherHertz) {
        Double rated = model.ratings().voltageV();
        if (volts == null || rated == null || volts.equals(rated) || model.drive() == Drive.ENGINE) {
            return null;
        }
        Double slip = otherHertz ? null : slip(model);
        if (slip != null && volts >= LEAST_VOLTS * rated && volts <= MOST_VOLTS * rated) {
            return new Correction(
                    By.VOLTS,
                    true,
                    volts,
                    rated,
                    Affinity.ofVoltages(volts, rated, slip).ratio());
        }
        Correction left = new Correction(By.VOLTS, false, volts, rated, 1);
        return left.off() < VOLTS_MAY_DIFFER ? null : left;
    }

    /**
     * The rated slip of an induction motor: its synchronous speed is 60 times the frequency over a whole number of pole pairs, the
     * next above its rated speed. Null when speed or frequency is not known, or they fit no such motor.
     */
    private static @Nullable Double slip(Model model) {
        Double rpm = model.ratings().speedRpm();
        Double hertz = model.ratings().frequencyHz();
        boolean induction = model.drive() == Drive.SINGLE_PHASE || model.drive() == Drive.THREE_PHASE;
        if (!induction || rpm == null || hertz == null) {
            return null;
        }
        double pairs = Math.floor(60 * hertz / rpm);
        double slip = 1 - rpm * pairs / (60 * hertz);
        return pairs >= 1 && slip >= LEAST_SLIP && slip <= MOST_SLIP ? (Double) slip : null;
    }
}
