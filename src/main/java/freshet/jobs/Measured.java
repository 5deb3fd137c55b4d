package freshet.jobs;

import freshet.hydraulics.MeasuredHead;
import freshet.hydraulics.Pattern.Reading;
import org.jspecify.annotations.Nullable;

/**
 * What was measured on a pump that seems weak.
 *
 * @param outletMm bore at the pump's outlet; null when nobody knows
 * @param flowM3h at the end of the line, above 0
 * @param flowDoubt its expanded uncertainty as a part of it
 * @param gauge null when there was none
 * @param amps running; null when nobody read them
 * @param head how the head read, as somebody saw it; null when it is to be taken from the numbers; and so flow and current
 */
record Measured(
        JobLine line,
        @Nullable Double outletMm,
        double flowM3h,
        double flowDoubt,
        MeasuredHead.@Nullable ByGauge gauge,
        @Nullable Double amps,
        @Nullable Reading head,
        @Nullable Reading flow,
        @Nullable Reading current) {

    /** Usual expanded uncertainty of a timed bucket: the cautious end of 2 to 5 % (common practice, no source). */
    static final double USUAL_FLOW_DOUBT = 0.05;
}
