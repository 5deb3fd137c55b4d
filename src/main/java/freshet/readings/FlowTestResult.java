package freshet.readings;

import freshet.hydraulics.FlowTestReduction;
import freshet.hydraulics.LineLoss;
import freshet.hydraulics.MeasuredFlow;
import freshet.hydraulics.PumpOrLine;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A flow test with what follows from it, worked out anew from what was measured.
 *
 * @param id null when it is not kept yet
 * @param figures null when they cannot be worked out any more, because the model's curve was changed
 * @param capacity null with the figures, or when the curve is level there, so that the uncertainty has no bound
 * @param firstTest this is the test that later ones are compared with
 * @param recordedBy who wrote it down
 * @param withdrawn null while the test stands
 */
public record FlowTestResult(
        @Nullable Long id,
        FlowTestDraft facts,
        @Nullable Figures figures,
        @Nullable Capacity capacity,
        boolean firstTest,
        List<Remark> remarks,
        @Nullable Long recordedBy,
        @Nullable Instant recordedAt,
        @Nullable Withdrawal withdrawn) {

    /**
     * The numbers of a test.
     *
     * @param meanSeconds null when no container was filled
     * @param spread largest less smallest time, over their mean; null when no container was filled
     * @param losses what the line takes at the measured flow; null when the head was read on a gauge
     * @param rated against the model's rated curve, its tolerance counted in
     * @param split the flow of a new pump without the line, and where it goes; null when the head was read on a gauge, or a new pump
     *     would run off its curve
     * @param measured the flow with its uncertainty and what it takes for granted
     * @param corrections in what the test ran otherwise than the curve holds, corrected or not
     */
    public record Figures(
            @Nullable Double meanSeconds,
            @Nullable Double spread,
            double flowM3h,
            double headM,
            @Nullable LineLoss losses,
            FlowTestReduction rated,
            @Nullable PumpOrLine split,
            MeasuredFlow measured,
            List<Correction> corrections) {}

    /** What to know before judging. */
    public enum Remark {
        /** The fill took less than 10 s, so that the thumb on the stopwatch weighs too much (common practice, no source). */
        SHORT_FILL,
        /** The level fell for less than 10 s, so that the thumb on the stopwatch weighs too much (common practice, no source). */
        SHORT_FALL,
        /** The times differ by more than 8 % of their mean: test again (common practice, no source). */
        SPREAD_OVER_8,
        /** The times differ by more than 5 % of their mean (common practice, no source). */
        SPREAD_OVER_5,
        FEW_REPEATS,
        /** The meter in the line shows more than 10 % beside the container (common practice, no source). */
        METER_DISAGREES,
        /** More than the reference, doubt counted in: look at curve, container and lift first. */
        MORE_THAN_REFERENCE,
        /** The first test was made on another rig. */
        OTHER_RIG,
        /** The curve was brought to the frequency of the test. */
        OTHER_FREQUENCY,
        HEAD_COMPUTED,
        FLAT_CURVE,
        /** The loss cannot be told from none. */
        LOSS_WITHIN_DOUBT;

        /** Whether the test should be made again, or its figures looked into, before anybody relies on it. */
        public boolean heavy() {
            return this == SHORT_FILL
                    || this == SHORT_FALL
                    || this == SPREAD_OVER_8
                    || this == METER_DISAGREES
                    || this == MORE_THAN_REFERENCE;
        }
    }

    /** A test was taken back, by whom and why; it stays to be read. */
    public record Withdrawal(Instant at, @Nullable Long by, String why) {}

    /** Whether it counts. */
    public boolean stands() {
        return withdrawn == null;
    }
}
