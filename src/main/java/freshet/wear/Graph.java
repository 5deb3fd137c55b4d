package freshet.wear;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Something measured against run hours, drawn on graph paper: lines, steps, bands of doubt, dots with their bars, lines across. Everything is in
 * the drawing's own coordinates, ready for the page; what leaves the sheet is cut off by it.
 */
final class Graph {

    static final double LEFT = 44;
    static final double RIGHT = 350;
    static final double TOP = 12;
    static final double BOTTOM = 262;
    private static final int FINE = 5;

    private final double fromX;
    private final double toX;
    private final double fromY;
    private final double toY;
    private final boolean percent;
    private final List<Trace> traces = new ArrayList<>();
    private final List<Dot> dots = new ArrayList<>();
    private final List<Label> labels = new ArrayList<>();

    /** Something drawn by the style of this name. */
    record Trace(String style, String d) {}

    /** A point of measurement and the ends of its bars. */
    record Dot(String style, String x, String y, String bars) {}

    /** A word at a place. */
    record Label(String style, String x, String y, String text) {}

    /** Hours across and a share, in percent on the sheet when {@code percent} is true, upwards. */
    Graph(double fromX, double toX, double fromY, double toY, boolean percent) {
        this.fromX = fromX;
        this.toX = toX;
        this.fromY = fromY;
        this.toY = toY;
        this.percent = percent;
    }

    Graph line(String style, double[] x, @Nullable Double[] y) {
        return trace(style, path(x, y));
    }

    /** Holds its value from each place to the next, and the last one to {@code toX}. */
    Graph steps(String style, double[] x, @Nullable Double[] y, double toX) {
        return trace(style, stairs(x, y, toX));
    }

    Graph band(String style, double[] x, @Nullable Double[] low, @Nullable Double[] high) {
        String there = path(x, high);
        String back = path(reversed(x), reversed(low));
        return there.isEmpty() || back.isEmpty() ? this : trace(style, there + "L" + back.substring(1) + "Z");
    }

    /** The band between two flights of steps, in pieces where one of them has no value. */
    Graph stepBand(String style, double[] x, @Nullable Double[] low, @Nullable Double[] high, double toX) {
        StringBuilder d = new StringBuilder();
        for (int i = 0; i < x.length; i++) {
            int begin = i;
            StringBuilder top = new StringBuilder();
            String bottom = "";
            while (i < x.length && low[i] != null && high[i] != null) {
                double end = i + 1 < x.length ? x[i + 1] : toX;
                top.append("V%sH%s".formatted(y(high[i]), x(end)));
                bottom = "V%sH%s".formatted(y(low[i]), x(x[i])) + bottom;
                i++;
            }
            if (i > begin) {
                d.append("M%s %s".formatted(x(x[begin]), y(high[begin])))
                        .append(top)
                        .append(bottom)
                        .append('Z');
            }
        }
        return trace(style, d.toString());
    }

    Graph across(String style, double atY) {
        return trace(style, "M%s %sH%s".formatted(text(LEFT), y(atY), text(RIGHT)));
    }

    Graph upright(String style, double atX) {
        return inside(atX) ? trace(style, "M%s %sV%s".formatted(x(atX), text(TOP), text(BOTTOM))) : this;
    }

    Graph dot(String style, double atX, double atY, double barUp, double barAlongFrom, double barAlongTo) {
        String bars = "M%s %sV%s".formatted(x(atX), y(atY - barUp), y(atY + barUp));
        if (barAlongTo > barAlongFrom) {
            bars += "M%s %sH%s".formatted(x(barAlongFrom), y(atY), x(barAlongTo));
        }
        dots.add(new Dot(style, x(atX), y(atY), bars));
        return this;
    }

    /** A word beside a place, moved by so much of the drawing's units; {@code style} is that of its letters. */
    Graph word(String style, double atX, double atY, double right, double down, String text) {
        labels.add(new Label(
                style,
                text(clamp(raw(atX, fromX, toX, LEFT, RIGHT) + right, LEFT, RIGHT)),
                text(clamp(raw(atY, fromY, toY, BOTTOM, TOP) + down, TOP + 10, BOTTOM - 4)),
                text));
        return this;
    }

    boolean inside(double atX) {
        return atX >= fromX && atX <= toX;
    }

    /** Places from one to another, evenly. */
    static double[] places(double from, double to, int steps) {
        double[] places = new double[steps + 1];
        for (int i = 0; i <= steps; i++) {
            places[i] = from + (to - from) * i / steps;
        }
        return places;
    }

    /** A step of 1, 2 or 5 times a power of ten, four to eight of them in the range. */
    static double step(double range) {
        double raw = range / 6;
        double power = Math.pow(10, Math.floor(Math.log10(raw)));
        double lead = raw / power;
        return power * (lead < 1.5 ? 1 : lead < 3.5 ? 2 : lead < 7.5 ? 5 : 10);
    }

    public List<Trace> getTraces() {
        return traces;
    }

    public List<Dot> getDots() {
        return dots;
    }

    public List<Label> getLabels() {
        return labels;
    }

    public String getFineGrid() {
        return grid(FINE);
    }

    public String getGrid() {
        return grid(1);
    }

    public List<Label> getHourTicks() {
        List<Label> ticks = new ArrayList<>();
        double step = step(toX - fromX);
        for (double at : stepsOf(fromX, toX, step)) {
            ticks.add(new Label("ax mid", x(at), text(BOTTOM + 16), number(at, step)));
        }
        return ticks;
    }

    public List<Label> getValueTicks() {
        List<Label> ticks = new ArrayList<>();
        double step = step(toY - fromY);
        for (double at : stepsOf(fromY, toY, step)) {
            String word = percent ? number(100 * at, 100 * step) + "\u00a0%" : number(at, step);
            ticks.add(new Label("ax end", text(LEFT - 4), text(raw(at, fromY, toY, BOTTOM, TOP) + 4), word));
        }
        return ticks;
    }

    private static String number(double value, double step) {
        int decimals = step >= 1 ? 0 : (int) Math.ceil(-Math.log10(step) - 1e-9);
        return String.format(Locale.ROOT, "%,." + decimals + "f", value + 0.0);
    }

    private static List<Double> stepsOf(double from, double to, double step) {
        List<Double> places = new ArrayList<>();
        for (long i = (long) Math.ceil(from / step - 1e-9); i * step <= to + 1e-9 * step; i++) {
            places.add(i * step);
        }
        return places;
    }

    private String grid(int parts) {
        StringBuilder d = new StringBuilder();
        for (double at : stepsOf(fromX, toX, step(toX - fromX) / parts)) {
            d.append("M%s %sV%s".formatted(x(at), text(TOP), text(BOTTOM)));
        }
        for (double at : stepsOf(fromY, toY, step(toY - fromY) / parts)) {
            d.append("M%s %sH%s".formatted(text(LEFT), y(at), text(RIGHT)));
        }
        return d.toString();
    }

    private Graph trace(String style, String d) {
        if (!d.isEmpty()) {
            traces.add(new Trace(style, d));
        }
        return this;
    }

    private String path(double[] x, @Nullable Double[] y) {
        StringBuilder d = new StringBuilder();
        for (int i = 0; i < x.length; i++) {
            Double at = y[i];
            if (at != null) {
                d.append(d.isEmpty() ? 'M' : 'L').append(x(x[i])).append(' ').append(y(at));
            }
        }
        return d.toString();
    }

    private String stairs(double[] x, @Nullable Double[] y, double end) {
        StringBuilder d = new StringBuilder();
        for (int i = 0; i < x.length; i++) {
            Double at = y[i];
            if (at != null) {
                d.append(d.isEmpty() ? "M%s %s".formatted(x(x[i]), y(at)) : "H%sV%s".formatted(x(x[i]), y(at)));
            }
        }
        return d.isEmpty() ? "" : d + "H" + x(end);
    }

    private String x(double value) {
        return text(raw(value, fromX, toX, LEFT, RIGHT));
    }

    private String y(double value) {
        return text(raw(value, fromY, toY, BOTTOM, TOP));
    }

    /** Far outside the sheet a place is drawn no farther than a few sheets away: browsers lose very large numbers. */
    private static double raw(double value, double from, double to, double begin, double end) {
        return clamp(begin + (end - begin) * (value - from) / (to - from), -2000, 2000);
    }

    private static double clamp(double value, double least, double most) {
        return Math.min(most, Math.max(least, value));
    }

    private static String text(double coordinate) {
        return String.format(Locale.ROOT, "%.1f", coordinate);
    }

    private static double[] reversed(double[] values) {
        double[] reversed = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            reversed[i] = values[values.length - 1 - i];
        }
        return reversed;
    }

    private static @Nullable Double[] reversed(@Nullable Double[] values) {
        @Nullable Double[] reversed = new Double[values.length];
        for (int i = 0; i < values.length; i++) {
            reversed[i] = values[values.length - 1 - i];
        }
        return reversed;
    }
}
