package freshet.pumps;

import freshet.hydraulics.Curve;
import freshet.measures.Quantity;
import freshet.measures.UnitSystem;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.DoubleUnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * A curve sheet as it is drawn on graph paper: head against flow, the rated line, this unit's line in its band of doubt, a job's
 * line, the duty point, and the tests with their error bars. Everything is in the drawing's own coordinates, ready for the page.
 */
public final class CurveSheet {

    private static final double LEFT = 30;
    private static final double RIGHT = 336;
    private static final double TOP = 26;
    private static final double BOTTOM = 268;
    private static final int STEPS = 60;
    private static final int FINE = 5;
    private static final double LABEL_HEIGHT = 12;
    private static final double LABEL_WIDTH = 9;
    /** What a word needs below a line. */
    private static final double ROOM = 22;

    private final UnitSystem system;
    private final double maxFlowM3h;
    private final double maxHeadM;
    private final List<Mark> tests = new ArrayList<>();
    private @Nullable String rated;
    private @Nullable String own;
    private @Nullable String band;
    private @Nullable String jobLine;
    private @Nullable Mark duty;
    private @Nullable Label ratedLabel;
    private @Nullable Label ownLabel;
    private @Nullable Label jobLabel;

    /** A place with a word. */
    public record Label(String x, String y, String text, String anchor) {}

    /** A ringed or open dot, the ends of its bars, and its number. */
    public record Mark(String x, String y, @Nullable String bars, String text, String textX, String textY) {}

    public CurveSheet(UnitSystem system, double maxFlowM3h, double maxHeadM) {
        this.system = system;
        this.maxFlowM3h = 1.07 * maxFlowM3h;
        this.maxHeadM = 1.12 * maxHeadM;
    }

    public CurveSheet rated(Curve curve, String word) {
        rated = path(curve::headAt, 0, curve.lastFlowM3h());
        double at = 0.55 * curve.lastFlowM3h();
        ratedLabel = new Label(text(x(at) + 8), text(y(curve.headAt(at)) - 10), word, "start");
        return this;
    }

    /** This unit's line, and the lines between which it lies by its uncertainty. */
    public CurveSheet own(Curve curve, Curve lower, Curve upper, String word) {
        own = path(curve::headAt, 0, curve.lastFlowM3h());
        band = path(upper::headAt, 0, upper.lastFlowM3h()) + backwards(lower::headAt, lower.lastFlowM3h()) + "Z";
        // below the line at its left there is always room
        double below = (y(lower.headAt(0.2 * lower.lastFlowM3h())) + BOTTOM) / 2;
        ownLabel = new Label(text(LEFT + 10), text(below), word, "start");
        return this;
    }

    /** A test with its expanded uncertainties. */
    public CurveSheet test(
            double flowM3h, double headM, double flowUncertaintyM3h, double headUncertaintyM, String number) {
        String bars = "M%s %sH%s"
                        .formatted(
                                text(x(Math.max(0, flowM3h - flowUncertaintyM3h))),
                                text(y(headM)),
                                text(x(flowM3h + flowUncertaintyM3h)))
                + "M%s %sV%s"
                        .formatted(
                                text(x(flowM3h)), text(y(headM - headUncertaintyM)), text(y(headM + headUncertaintyM)));
        double labelX = x(flowM3h) + 8;
        double labelY = y(headM) - 7;
        // a number that would cover another moves up
        while (covered(labelX, labelY)) {
            labelY -= LABEL_HEIGHT;
        }
        tests.add(new Mark(text(x(flowM3h)), text(y(headM)), bars, number, text(labelX), text(labelY)));
        return this;
    }

    private boolean covered(double labelX, double labelY) {
        return tests.stream()
                .anyMatch(test -> Math.abs(Double.parseDouble(test.textX()) - labelX) < LABEL_WIDTH
                        && Math.abs(Double.parseDouble(test.textY()) - labelY) < LABEL_HEIGHT);
    }

    /** What a line asks for, lift and losses, drawn until it leaves the sheet. */
    public CurveSheet job(DoubleUnaryOperator headM, String word) {
        double to = maxFlowM3h;
        while (to > 1e-3 * maxFlowM3h && headM.applyAsDouble(to) > maxHeadM) {
            to *= 0.98;
        }
        jobLine = path(headM, 0, to);
        double lift = y(headM.applyAsDouble(0));
        if (ownLabel != null && Math.abs(Double.parseDouble(ownLabel.y()) - lift) < ROOM) {
            ownLabel = new Label(ownLabel.x(), text(lift + ROOM), ownLabel.text(), ownLabel.anchor());
        }
        // just below the end of the line, inside of the sheet
        jobLabel = new Label(text(x(to) - 6), text(y(headM.applyAsDouble(to)) + 18), word, "end");
        return this;
    }

    public CurveSheet duty(double flowM3h, double headM, String flowText) {
        duty = new Mark(text(x(flowM3h)), text(y(headM)), null, flowText, text(x(flowM3h) + 4), text(BOTTOM - 8));
        return this;
    }

    public @Nullable String getRated() {
        return rated;
    }

    public @Nullable Label getRatedLabel() {
        return ratedLabel;
    }

    public @Nullable String getOwn() {
        return own;
    }

    public @Nullable Label getOwnLabel() {
        return ownLabel;
    }

    public @Nullable Label getJobLabel() {
        return jobLabel;
    }

    public @Nullable String getBand() {
        return band;
    }

    public @Nullable String getJobLine() {
        return jobLine;
    }

    public @Nullable Mark getDuty() {
        return duty;
    }

    public List<Mark> getTests() {
        return tests;
    }

    /** The fine grid, in the person's own units. */
    public String getFineGrid() {
        return grid(true);
    }

    public String getGrid() {
        return grid(false);
    }

    public List<Label> getFlowTicks() {
        return ticks(Quantity.FLOW, system, true);
    }

    public List<Label> getOtherFlowTicks() {
        return ticks(Quantity.FLOW, system.other(), true);
    }

    public List<Label> getHeadTicks() {
        return ticks(Quantity.HEAD, system, false);
    }

    public List<Label> getOtherHeadTicks() {
        return ticks(Quantity.HEAD, system.other(), false);
    }

    public String getFlowUnit() {
        return Quantity.FLOW.unit(system);
    }

    public String getHeadUnit() {
        return Quantity.HEAD.unit(system);
    }

    public String getOtherFlowUnit() {
        return Quantity.FLOW.unit(system.other());
    }

    public String getOtherHeadUnit() {
        return Quantity.HEAD.unit(system.other());
    }

    private String grid(boolean fine) {
        StringBuilder lines = new StringBuilder();
        double flowStep = step(Quantity.FLOW, maxFlowM3h, system) / (fine ? FINE : 1);
        for (int i = 1; i * flowStep < maxFlowM3h; i++) {
            if (!fine || i % FINE != 0) {
                lines.append("M%s %sV%s".formatted(text(x(i * flowStep)), text(TOP), text(BOTTOM)));
            }
        }
        double headStep = step(Quantity.HEAD, maxHeadM, system) / (fine ? FINE : 1);
        for (int i = 1; i * headStep < maxHeadM; i++) {
            if (!fine || i % FINE != 0) {
                lines.append("M%s %sH%s".formatted(text(LEFT), text(y(i * headStep)), text(RIGHT)));
            }
        }
        return lines.toString();
    }

    private List<Label> ticks(Quantity quantity, UnitSystem in, boolean flow) {
        double most = flow ? maxFlowM3h : maxHeadM;
        double step = step(quantity, most, in);
        List<Label> ticks = new ArrayList<>();
        for (int i = 0; i * step <= 0.97 * most; i++) {
            String word = quantity.input(i * step, in);
            // the upper axis begins where the word for the head stands, and its 0 is that of the lower one
            if (flow && (i > 0 || in == system)) {
                double above = in == system ? BOTTOM + 15 : TOP - 7;
                ticks.add(new Label(text(x(i * step)), text(above), word, "middle"));
            } else if (!flow && i > 0) {
                boolean left = in == system;
                ticks.add(new Label(
                        text(left ? LEFT - 5 : RIGHT + 5), text(y(i * step) + 4), word, left ? "end" : "start"));
            }
        }
        return ticks;
    }

    /** A step of 1, 2 or 5 times a power of ten in the unit that is read, four to eight of them on an axis; in the unit inside. */
    private static double step(Quantity quantity, double most, UnitSystem in) {
        double one = quantity.parse("1", in);
        double raw = most / one / 6;
        double power = Math.pow(10, Math.floor(Math.log10(raw)));
        double lead = raw / power;
        return one * power * (lead < 1.5 ? 1 : lead < 3.5 ? 2 : lead < 7.5 ? 5 : 10);
    }

    private String path(DoubleUnaryOperator headM, double from, double to) {
        StringBuilder path = new StringBuilder();
        for (int i = 0; i <= STEPS; i++) {
            double flow = from + (to - from) * i / STEPS;
            path.append(i == 0 ? 'M' : 'L')
                    .append(text(x(flow)))
                    .append(' ')
                    .append(text(y(headM.applyAsDouble(flow))));
        }
        return path.toString();
    }

    private String backwards(DoubleUnaryOperator headM, double from) {
        StringBuilder path = new StringBuilder();
        for (int i = STEPS; i >= 0; i--) {
            double flow = from * i / STEPS;
            path.append('L').append(text(x(flow))).append(' ').append(text(y(headM.applyAsDouble(flow))));
        }
        return path.toString();
    }

    private double x(double flowM3h) {
        return LEFT + (RIGHT - LEFT) * Math.min(1, Math.max(0, flowM3h / maxFlowM3h));
    }

    private double y(double headM) {
        return BOTTOM - (BOTTOM - TOP) * Math.min(1, Math.max(0, headM / maxHeadM));
    }

    private static String text(double coordinate) {
        return String.format(Locale.ROOT, "%.1f", coordinate);
    }
}
