package freshet.readings;

import freshet.hydraulics.FlowTestReduction.StatedBy;
import java.time.Instant;

/**
 * What a unit still gives, as its latest flow test shows: never without the head at which it holds, its uncertainty and what it is
 * compared with.
 *
 * @param fraction of the reference flow at the measured head, or of the reference head at the measured flow: see {@code statedBy}
 * @param expandedUncertainty of the fraction, k = 2
 * @param headM measured total head, m
 * @param flowM3h measured flow, m³/h
 * @param referenceFlowM3h the reference curve's flow at that head, m³/h
 * @param referenceHeadM the reference curve's head at that flow, m; the measured head itself when the flow is beyond the curve
 * @param reference what it is compared with
 * @param onAnotherRig the first test was made on another rig, so part of the difference may be the rig's
 * @param tests how many tests of the unit stand, this one and the first among them
 */
public record Capacity(
        long unitId,
        long testId,
        double fraction,
        double expandedUncertainty,
        double headM,
        double flowM3h,
        double referenceFlowM3h,
        double referenceHeadM,
        Reference reference,
        StatedBy statedBy,
        boolean onAnotherRig,
        Instant testedAt,
        int tests) {

    /** What a test is compared with. */
    public enum Reference {
        /** The rated curve brought through the unit's own first test. */
        OWN_FIRST_TEST,
        /** The model's rated curve, with its tolerance. */
        RATED_CURVE
    }
}
