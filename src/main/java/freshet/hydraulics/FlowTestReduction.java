package freshet.hydraulics;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a flow test says about a pump: how much of a reference curve is left, by flow at the measured head and by head at the
 * measured flow, each with its uncertainty by the law of propagation through the whole chain (JCGM 100:2008, 5.1.2): the flow
 * acts on the head too, through the losses or the velocity head.
 *
 * <p>A pump that did not turn at the reference curve's speed is compared with the curve brought to its speed: {@link
 * Affinity#curve(Curve)}. Line data and water are taken as exact.
 *
 * @param flowM3h measured flow, m³/h
 * @param totalHeadM total head at that flow, m
 * @param referenceFlowM3h the reference curve's flow at that head, m³/h
 * @param remainingFraction measured flow over reference flow
 * @param expandedUncertainty of the remaining fraction, k = 2; null where the curve is level, so that it has no bound
 * @param headFraction measured head over the reference head at the measured flow; null when the flow is beyond the curve
 * @param headExpandedUncertainty of the head fraction, k = 2; null with it
 * @param statedBy the fraction with the smaller relative expanded uncertainty
 * @param coverageFactor95 factor on half the expanded uncertainty of the fraction stated that gives 95 % coverage when the
 *     scatter of few repeats is a part of it (GUM G.4); 1.96 when it is not
 * @param repeatability sample standard deviation of the repeats over their mean; null for one
 * @param verdictReasons what to know before judging, worst first
 */
public record FlowTestReduction(
        double flowM3h,
        double totalHeadM,
        double referenceFlowM3h,
        double remainingFraction,
        @Nullable Double expandedUncertainty,
        @Nullable Double headFraction,
        @Nullable Double headExpandedUncertainty,
        StatedBy statedBy,
        double coverageFactor95,
        @Nullable Double repeatability,
        List<Reason> verdictReasons) {

    /** The fraction by which a test is stated: by head where the curve is flat. */
    public enum StatedBy {
        FLOW,
        HEAD
    }

    /** What to know before judging a test; the numbers are common practice, no source. */
    public enum Reason {
        /** The fill took less than 10 s: reaction time weighs too much. */
        FILL_UNDER_10_S,
        /** Repeats differ by a standard deviation above 5 % of their mean. */
        REPEATS_SCATTER,
        /** Fewer than three repeats. */
        FEWER_THAN_3_REPEATS,
        /** More than the reference with its doubt: look at the curve, the speed and the rig first. */
        BETTER_THAN_REFERENCE,
        /** The measured flow is beyond the reference curve's last point, so nothing is said by head. */
        FLOW_BEYOND_REFERENCE,
        /** The total head was computed from the line, not gauged. */
        HEAD_NOT_GAUGED,
        /** No tolerance of the reference curve was given: the uncertainty leaves it out. */
        CURVE_TAKEN_AS_EXACT,
        /** The curve is flat here: the head says more than the flow. */
        FLAT_CURVE,
        /** The loss is no larger than its uncertainty: it cannot be told from none. */
        LOSS_WITHIN_DOUBT,
        /** The loss is larger than its uncertainty. */
        LOSS_BEYOND_DOUBT
    }

    private static final double SHORT_FILL_S = 10;
    private static final double WIDE_SCATTER = 0.05;
    private static final int ENOUGH_REPEATS = 3;

    /**
     * Reduces a flow test.
     *
     * @param reference the rated curve, or the unit's own first curve, at the speed of the test
     * @param flow what was measured
     * @param head how the total head is known
     * @param curveUncertaintyFraction standard uncertainty of the reference curve over its value, 0 to 1; 0 when it is unknown or
     *     taken as exact
     * @throws OutOfRange when the total head lies outside the curve's heads, saying which way
     */
    public static FlowTestReduction of(
            Curve reference, MeasuredFlow flow, MeasuredHead head, double curveUncertaintyFraction) {
        OutOfRange.check("curveUncertaintyFraction", curveUncertaintyFraction, "", 0, 1);
        double q = flow.flowM3h();
        double h = head.headAt(q);
        refuseOutside(reference, h, head.blame());
        double uFlow = flow.standardUncertaintyM3h();
        double uHead = head.standardUncertaintyM();
        double lineSlope = head.slopeAt(q);

        double qRef = reference.flow(h);
        double remaining = q / qRef;
        // r = q / qRef(h(q)): the curve's inverse has the slope 1/H'
        double flowPerHead = 1 / reference.slope(qRef);
        double byHead = -remaining / qRef * flowPerHead;
        double byFlow = 1 / qRef + byHead * lineSlope;
        Double expanded = expanded(byFlow * uFlow, byHead * uHead, remaining * curveUncertaintyFraction);

        Double headFraction = null;
        Double headExpanded = null;
        double headByFlow = 0;
        double hRef = q <= reference.lastFlowM3h() ? reference.head(q) : 0;
        if (hRef > 0) {
            headFraction = h / hRef;
            headByFlow = (lineSlope - headFraction * reference.slope(q)) / hRef;
            headExpanded = expanded(headByFlow * uFlow, uHead / hRef, headFraction * curveUncertaintyFraction);
        }
        boolean byHeadIsBetter = headFraction != null
                && headFraction > 0
                && headExpanded != null
                && (expanded == null || headExpanded / headFraction < expanded / remaining);
        double scatter = Math.abs(byHeadIsBetter ? headByFlow : byFlow) * flow.scatterM3h();
        Double stated = byHeadIsBetter ? headExpanded : expanded;
        double statedFraction = byHeadIsBetter && headFraction != null ? headFraction : remaining;
        return new FlowTestReduction(
                q,
                h,
                qRef,
                remaining,
                expanded,
                headFraction,
                headExpanded,
                byHeadIsBetter ? StatedBy.HEAD : StatedBy.FLOW,
                coverage(stated, scatter, flow.repeats()),
                flow.repeatability(),
                reasons(flow, head, curveUncertaintyFraction, statedFraction, stated, headFraction, byHeadIsBetter));
    }

    private static void refuseOutside(Curve reference, double h, String field) {
        if (h < reference.lastHeadM()) {
            throw OutOfRange.belowCurve(field, h, reference.lastHeadM());
        }
        if (h >= reference.shutOffHeadM() || !(reference.flow(h) > 0)) {
            throw OutOfRange.aboveCurve(field, h, reference.shutOffHeadM());
        }
    }

    /** Twice the root of the sum of squares; null when it has no bound. */
    private static @Nullable Double expanded(double... parts) {
        double sum = 0;
        for (double part : parts) {
            sum += part * part;
        }
        double expanded = 2 * Math.sqrt(sum);
        return Double.isFinite(expanded) ? Double.valueOf(expanded) : null;
    }

    private static double coverage(@Nullable Double expanded, double scatter, int repeats) {
        if (expanded == null || !(expanded > 0) || !(scatter > 0) || repeats < 2) {
            return Uncertainty.coverageFactor95(Double.POSITIVE_INFINITY);
        }
        double share = Math.min(1, 2 * scatter / expanded);
        return Uncertainty.coverageFactor95((repeats - 1) / (share * share * share * share));
    }

    private static List<Reason> reasons(
            MeasuredFlow flow,
            MeasuredHead head,
            double curveUncertainty,
            double fraction,
            @Nullable Double expanded,
            @Nullable Double headFraction,
            boolean byHead) {
        List<Reason> reasons = new ArrayList<>();
        if (flow.meanSeconds() != null && flow.meanSeconds() < SHORT_FILL_S) {
            reasons.add(Reason.FILL_UNDER_10_S);
        }
        if (flow.repeatability() != null && flow.repeatability() > WIDE_SCATTER) {
            reasons.add(Reason.REPEATS_SCATTER);
        }
        if (flow.repeats() < ENOUGH_REPEATS) {
            reasons.add(Reason.FEWER_THAN_3_REPEATS);
        }
        if (expanded != null && fraction - expanded > 1) {
            reasons.add(Reason.BETTER_THAN_REFERENCE);
        }
        if (headFraction == null) {
            reasons.add(Reason.FLOW_BEYOND_REFERENCE);
        }
        if (head instanceof MeasuredHead.ByLine) {
            reasons.add(Reason.HEAD_NOT_GAUGED);
        }
        if (curveUncertainty == 0) {
            reasons.add(Reason.CURVE_TAKEN_AS_EXACT);
        }
        if (byHead) {
            reasons.add(Reason.FLAT_CURVE);
        }
        reasons.add(expanded != null && fraction + expanded < 1 ? Reason.LOSS_BEYOND_DOUBT : Reason.LOSS_WITHIN_DOUBT);
        return List.copyOf(reasons);
    }
}
