package freshet.readings;

import freshet.hydraulics.Affinity;
import freshet.hydraulics.Curve;
import freshet.hydraulics.FlowTestReduction;
import freshet.hydraulics.FlowTestReduction.StatedBy;
import freshet.hydraulics.Line;
import freshet.hydraulics.LineLoss;
import freshet.hydraulics.MeasuredFlow;
import freshet.hydraulics.MeasuredHead;
import freshet.hydraulics.OutOfRange;
import freshet.hydraulics.PumpOrLine;
import freshet.hydraulics.Section;
import freshet.hydraulics.Water;
import freshet.hydraulics.WornCurve;
import freshet.pumps.Model;
import freshet.readings.FlowTestResult.Figures;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Works out the flow tests of one unit.
 *
 * <p>The first test that stands is held against the model's rated curve, with the curve's tolerance. Every later one is held against
 * the unit's own curve: the rated curve brought through the first test, by multiplying all its flows by what the first test had of
 * the rated flow or, where that test was stated by head because the curve is flat there, all its heads by what it had of the rated
 * head. The remaining fraction is read from that curve at the measured head (or at the measured flow) as from any other. So the rated
 * curve gives the shape only and its tolerance drops out; in its place stands the relative uncertainty of the first test, added in
 * quadrature as if nothing of the two tests' errors were shared, which is the cautious side when one rig made both.
 */
final class FlowTestWorking {

    private final Model model;
    private final @Nullable OwnCurve own;

    /** The rated curve brought through the first test, and the standard uncertainty of that as a fraction. */
    private record OwnCurve(Curve curve, double uncertainty, StatedBy statedBy, FlowTestDraft first) {}

    /** @param first the unit's first test that stands; null when there is none */
    FlowTestWorking(Model model, @Nullable FlowTestDraft first) {
        this.model = model;
        this.own = first == null ? null : throughFirst(model, first);
    }

    private static @Nullable OwnCurve throughFirst(Model model, FlowTestDraft first) {
        try {
            FlowTestReduction exact =
                    FlowTestReduction.of(atSpeed(model.curve(), model, first), flow(first), head(first), 0);
            Curve curve = through(model.curve(), exact);
            Double expanded = expandedUncertainty(exact);
            return curve == null || expanded == null
                    ? null
                    : new OwnCurve(curve, expanded / 2 / fraction(exact), exact.statedBy(), first);
        } catch (OutOfRange curveWasChanged) {
            return null;
        }
    }

    /** The curve brought through a test; null when the test is out of all proportion to it. */
    private static @Nullable Curve through(Curve curve, FlowTestReduction test) {
        try {
            return test.statedBy() == StatedBy.HEAD ? curve.scaled(1, fraction(test)) : curve.scaled(fraction(test), 1);
        } catch (OutOfRange outOfProportion) {
            return null;
        }
    }

    private static double fraction(FlowTestReduction test) {
        Double byHead = test.headFraction();
        return test.statedBy() == StatedBy.HEAD && byHead != null ? byHead : test.remainingFraction();
    }

    private static @Nullable Double expandedUncertainty(FlowTestReduction test) {
        return test.statedBy() == StatedBy.HEAD ? test.headExpandedUncertainty() : test.expandedUncertainty();
    }

    /** @throws OutOfRange when the test does not fit the rated curve */
    Figures figures(FlowTestDraft draft) {
        MeasuredFlow flow = flow(draft);
        Curve rated = atSpeed(model.curve(), model, draft);
        FlowTestReduction reduction = FlowTestReduction.of(rated, flow, head(draft), model.curveUncertainty());
        Line line = draft.gauge() == null ? line(draft) : null;
        return new Figures(
                draft.container() == null ? null : flow.meanSeconds(),
                spread(draft),
                flow.flowM3h(),
                reduction.totalHeadM(),
                line == null ? null : LineLoss.of(line, flow.flowM3h()),
                reduction,
                line == null ? null : split(rated, line, flow.flowM3h()),
                flow,
                Correction.of(model, draft));
    }

    private static @Nullable Double spread(FlowTestDraft draft) {
        DoubleSummaryStatistics times =
                draft.seconds().stream().mapToDouble(s -> s).summaryStatistics();
        return times.getCount() == 0 ? null : (Double) ((times.getMax() - times.getMin()) / times.getAverage());
    }

    /** Against the unit's own first test when there is one before this, else against the rated curve. */
    Compared compared(FlowTestDraft draft, Figures figures) {
        if (own != null && draft.at().isAfter(own.first().at())) {
            try {
                return new Compared(
                        FlowTestReduction.of(
                                atSpeed(own.curve(), model, draft), flow(draft), head(draft), own.uncertainty()),
                        Capacity.Reference.OWN_FIRST_TEST,
                        !sameRig(own.first(), draft));
            } catch (OutOfRange higherThanItsOwnCurve) {
                // the rated curve still holds it
            }
        }
        return new Compared(figures.rated(), Capacity.Reference.RATED_CURVE, false);
    }

    /** Against the unit's first test, that one too, always by what that one is stated by; the first test's own doubt left out. */
    ComparedTest againstFirst(long testId, FlowTestDraft draft) {
        double flowM3h = flow(draft).flowM3h();
        Double fraction = null;
        Double expanded = null;
        boolean byHead = own != null && own.statedBy() == StatedBy.HEAD;
        if (own != null) {
            try {
                FlowTestReduction reduction =
                        FlowTestReduction.of(atSpeed(own.curve(), model, draft), flow(draft), head(draft), 0);
                fraction = byHead ? reduction.headFraction() : (Double) reduction.remainingFraction();
                expanded = byHead ? reduction.headExpandedUncertainty() : reduction.expandedUncertainty();
            } catch (OutOfRange doesNotFit) {
                // listed without a fraction
            }
        }
        boolean known = fraction != null && expanded != null;
        return new ComparedTest(
                draft.unitId(),
                testId,
                draft.at(),
                headM(draft),
                flowM3h,
                known ? fraction : null,
                known ? (Double) (expanded / 2) : null,
                byHead ? StatedBy.HEAD : StatedBy.FLOW,
                own != null && !sameRig(own.first(), draft));
    }

    /** A test held against a curve. */
    record Compared(FlowTestReduction reduction, Capacity.Reference reference, boolean onAnotherRig) {

        /** Null when the curve is level there, so that the uncertainty has no bound. */
        @Nullable
        Capacity capacity(long unitId, long testId, FlowTestDraft draft, int tests) {
            Double expanded = expandedUncertainty(reduction);
            if (expanded == null) {
                return null;
            }
            Double headFraction = reduction.headFraction();
            return new Capacity(
                    unitId,
                    testId,
                    fraction(reduction),
                    expanded,
                    reduction.totalHeadM(),
                    reduction.flowM3h(),
                    reduction.referenceFlowM3h(),
                    headFraction == null || headFraction == 0
                            ? reduction.totalHeadM()
                            : reduction.totalHeadM() / headFraction,
                    reference,
                    reduction.statedBy(),
                    onAnotherRig,
                    draft.at(),
                    tests);
        }
    }

    /** A rig is the same when its name, its ways to find flow and head and every piece are. */
    static boolean sameRig(FlowTestDraft one, FlowTestDraft other) {
        boolean same = rigName(one).equals(rigName(other))
                && (one.gauge() == null) == (other.gauge() == null)
                && method(one) == method(other)
                && one.pieces().size() == other.pieces().size();
        for (int i = 0; same && i < one.pieces().size(); i++) {
            same = alike(one.pieces().get(i), other.pieces().get(i));
        }
        return same;
    }

    /** A bore typed in inches and shown again is not the same to the last digit. */
    private static boolean alike(FlowTestDraft.Piece one, FlowTestDraft.Piece other) {
        return one.piece().equals(other.piece())
                && alike(one.innerDiameterMm(), other.innerDiameterMm())
                && alike(one.lengthM(), other.lengthM());
    }

    private static boolean alike(double one, double other) {
        return Math.abs(one - other) <= 0.001 * Math.max(Math.abs(one), Math.abs(other));
    }

    private static String rigName(FlowTestDraft draft) {
        return draft.rig() == null ? "" : draft.rig().strip().toLowerCase(Locale.ROOT);
    }

    private static MeasuredFlow.Method method(FlowTestDraft draft) {
        return draft.by() == null
                ? MeasuredFlow.Method.TIMED_CONTAINER
                : draft.by().method();
    }

    static MeasuredFlow flow(FlowTestDraft draft) {
        return draft.flow();
    }

    /** The most that the rated curve gives at the speed of the test, m³/h. */
    static double mostFlowM3h(Model model, FlowTestDraft draft) {
        return atSpeed(model.curve(), model, draft).lastFlowM3h();
    }

    static boolean atOtherFrequency(Model model, FlowTestDraft draft) {
        return Correction.of(model, draft).stream().anyMatch(correction -> correction.by() == Correction.By.FREQUENCY);
    }

    /** The rated curve at the speed of the test. */
    static Curve atSpeed(Model model, FlowTestDraft draft) {
        return atSpeed(model.curve(), model, draft);
    }

    private static Curve atSpeed(Curve curve, Model model, FlowTestDraft draft) {
        double ratio = ratio(Correction.of(model, draft));
        return ratio == 1 ? curve : new Affinity(ratio).curve(curve);
    }

    static double ratio(List<Correction> corrections) {
        return corrections.stream().mapToDouble(Correction::ratio).reduce(1, (one, other) -> one * other);
    }

    /** Total head at the measured flow, m, wherever the curve lies. */
    static double headM(FlowTestDraft draft) {
        return head(draft).headAt(flow(draft).flowM3h());
    }

    static MeasuredHead head(FlowTestDraft draft) {
        FlowTestDraft.Gauge gauge = draft.gauge();
        return gauge == null
                ? new MeasuredHead.ByLine(line(draft), draft.heightUncertaintyM())
                : new MeasuredHead.ByGauge(
                        gauge.kPa(),
                        gauge.aboveWaterM(),
                        gauge.boreMm(),
                        gauge.uncertaintyKPa(),
                        draft.waterC(),
                        draft.heightUncertaintyM());
    }

    /** The head at no flow, m, and its standard uncertainty; null when the valve was not shut. */
    static WornCurve.@Nullable TestPoint shutOff(FlowTestDraft draft) {
        FlowTestDraft.ShutOff shut = draft.shutOff();
        if (shut == null) {
            return null;
        }
        Water water = Water.at(draft.waterC());
        double head = water.headM(1000 * shut.kPa()) + shut.aboveWaterM();
        double uncertainty = Math.hypot(water.headM(1000 * shut.uncertaintyKPa()), draft.heightUncertaintyM());
        return WornCurve.TestPoint.shutOff(head, uncertainty);
    }

    private static Line line(FlowTestDraft draft) {
        List<Section> sections =
                draft.pieces().stream().map(FlowTestDraft.Piece::section).toList();
        double lift = draft.liftM() == null ? Double.NaN : draft.liftM();
        return new Line(lift, draft.waterC(), draft.pumpOutletMm(), draft.exitLoss(), sections);
    }

    private static @Nullable PumpOrLine split(Curve rated, Line line, double flowM3h) {
        Line bare = new Line(line.liftM(), line.waterTemperatureC(), line.pumpOutletMm(), Line.FREE_END, List.of());
        try {
            return PumpOrLine.of(rated, bare, line, flowM3h);
        } catch (OutOfRange runsOffItsCurve) {
            return null;
        }
    }
}
