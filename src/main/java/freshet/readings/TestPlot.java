package freshet.readings;

import freshet.hydraulics.Curve;
import freshet.hydraulics.OutOfRange;
import freshet.hydraulics.WornCurve;
import freshet.pumps.Model;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The tests of a unit as they are drawn on a curve sheet, newest first, and the line that the unit runs on now.
 *
 * @param line null when no test stands, or none fits the rated curve any more
 */
public record TestPlot(List<Point> points, @Nullable OwnLine line) {

    /**
     * Tests this long before the latest still show the unit as it is now; common practice, no source. Older ones are drawn but do
     * not bend its line.
     */
    static final Duration SAME_CONDITION = Duration.ofDays(60);

    private static final double COVERAGE = 2;
    private static final double LOWEST_FACTOR = 0.01;

    /** One measured point with its expanded uncertainties, k = 2; at no flow when the valve was shut. */
    public record Point(
            long testId, double flowM3h, double headM, double flowUncertaintyM3h, double headUncertaintyM) {}

    /**
     * The rated curve scaled to the tests, and the lines between which it lies by their uncertainty, k = 2. The rated curve gives the
     * shape only, so that its own tolerance does not widen the band.
     */
    public record OwnLine(Curve curve, Curve lower, Curve upper, WornCurve.Identified identified) {}

    static TestPlot of(Model model, List<FlowTest> newestFirst) {
        List<Point> points = new ArrayList<>();
        List<WornCurve.TestPoint> now = new ArrayList<>();
        for (FlowTest test : newestFirst) {
            try {
                boolean recent = !test.at.isBefore(newestFirst.get(0).at.minus(SAME_CONDITION));
                List<WornCurve.TestPoint> its = atRatedSpeed(model, test.facts());
                its.forEach(point -> points.add(drawn(test.id, point)));
                if (recent && !FlowTestWorking.atOtherFrequency(model, test.facts())) {
                    now.addAll(its);
                }
            } catch (OutOfRange modelWasChanged) {
                // a test that can no longer be brought to the model's speed is not drawn
            }
        }
        return new TestPlot(List.copyOf(points), line(model.curve(), now));
    }

    /** The points of a test; where a speed was read or follows from the volts, as they lie at the rated speed by the affinity laws. */
    private static List<WornCurve.TestPoint> atRatedSpeed(Model model, FlowTestDraft facts) {
        double ratio = FlowTestWorking.ratio(Correction.of(model, facts).stream()
                .filter(correction -> correction.by() != Correction.By.FREQUENCY)
                .toList());
        WornCurve.TestPoint running = WornCurve.TestPoint.of(facts.flow(), FlowTestWorking.head(facts));
        return Stream.of(running, FlowTestWorking.shutOff(facts))
                .filter(Objects::nonNull)
                .map(point -> new WornCurve.TestPoint(
                        point.flowM3h() / ratio,
                        point.headM() / ratio / ratio,
                        point.flowUncertaintyM3h() / ratio,
                        point.headUncertaintyM() / ratio / ratio,
                        point.headPerFlow() / ratio))
                .toList();
    }

    private static Point drawn(long testId, WornCurve.TestPoint point) {
        double headUncertainty = Math.hypot(point.headUncertaintyM(), point.headPerFlow() * point.flowUncertaintyM3h());
        return new Point(
                testId,
                point.flowM3h(),
                point.headM(),
                COVERAGE * point.flowUncertaintyM3h(),
                COVERAGE * headUncertainty);
    }

    private static @Nullable OwnLine line(Curve rated, List<WornCurve.TestPoint> now) {
        if (now.isEmpty()) {
            return null;
        }
        try {
            WornCurve worn = WornCurve.of(rated, now, 0);
            return new OwnLine(
                    worn.curve(), shifted(rated, worn, -COVERAGE), shifted(rated, worn, COVERAGE), worn.identified());
        } catch (OutOfRange doesNotFit) {
            return null;
        }
    }

    private static Curve shifted(Curve rated, WornCurve worn, double by) {
        double flow = worn.flowFactorUncertainty() == null ? 0 : by * worn.flowFactorUncertainty();
        double head = worn.headFactorUncertainty() == null ? 0 : by * worn.headFactorUncertainty();
        return rated.scaled(
                Math.max(LOWEST_FACTOR, worn.flowFactor() + flow), Math.max(LOWEST_FACTOR, worn.headFactor() + head));
    }
}
