package freshet.readings;

import freshet.hydraulics.FlowTestReduction.StatedBy;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * A standing flow test held against the one reference that all tests of its unit share, so that they may be followed from test to test: the rated
 * curve brought through the unit's first test, all by flow or all by head. The first test is therefore 1 by definition.
 *
 * <p>The uncertainty is this test's own. What is in doubt about the first test moves all fractions alike; it is not counted into each of them, as it
 * is in {@link Capacity}, but once, as the first test's own.
 *
 * @param fraction of the first test; null when the test does not fit that curve, or the curve is level there
 * @param standardUncertainty of the fraction; null with it
 * @param statedBy whether flows at one head or heads at one flow are compared
 * @param onAnotherRig than the first
 */
public record ComparedTest(
        long unitId,
        long testId,
        Instant at,
        double headM,
        double flowM3h,
        @Nullable Double fraction,
        @Nullable Double standardUncertainty,
        StatedBy statedBy,
        boolean onAnotherRig) {}
