package freshet.wear;

import freshet.readings.ComparedTest;
import freshet.reliability.CapacityTrend;
import freshet.reliability.RobustLine;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** Draws the wear of a unit: its tests with their bars, the line with its bands, the threshold, the repair and where the meter stands. */
final class WearSheet {

    /** Bars are drawn at this factor on the standard uncertainty. */
    static final double COVERAGE = 2;

    private static final int STEPS = 60;

    /** The words on the sheet. */
    record Words(String threshold, String now, String repaired) {}

    private WearSheet() {}

    /** The picture; null when no test has a place on it. */
    static @Nullable Graph of(UnitWear wear, Words words) {
        List<Tested> drawn = wear.line().tests().stream().filter(Tested::drawn).toList();
        if (drawn.isEmpty()) {
            return null;
        }
        double first = drawn.stream().mapToDouble(WearSheet::hours).min().orElse(0);
        double last = drawn.stream().mapToDouble(WearSheet::hours).max().orElse(0);
        double now = wear.hoursNow() == null ? last : Math.max(last, wear.hoursNow());
        double far = far(wear, now);
        double spread = Math.max(far - first, 1);
        // hours far from new would leave half of the sheet empty
        double fromX = first < 0.5 * far ? 0 : Math.max(0, first - 0.1 * spread);
        double toX = far + 0.06 * (far - fromX) + 1e-3;
        Graph graph = new Graph(fromX, Math.max(toX, fromX + 1), lowest(wear, drawn), highest(drawn), true);
        lines(graph, wear, now, fromX, toX);
        double threshold = wear.asked().threshold();
        graph.across("mark", threshold).word("halo strong", fromX, threshold, 4, 12, words.threshold());
        Repair restart = wear.line().restart();
        if (restart != null && restart.hours() != null) {
            double at = restart.hours().hours();
            graph.upright("leader", at).word("halo", at, highest(drawn), 3, 20, words.repaired());
        }
        if (wear.hoursNow() != null) {
            graph.upright("drop", wear.hoursNow())
                    .word("halo strong end", wear.hoursNow(), lowest(wear, drawn), -3, -6, words.now());
        }
        int number = 0;
        for (Tested tested : wear.line().tests()) {
            number++;
            if (tested.drawn()) {
                dot(graph, tested, String.valueOf(number));
            }
        }
        return graph;
    }

    private static double far(UnitWear wear, double now) {
        Double there = wear.reaching() == null ? null : (Double) wear.reaching().hours();
        return there == null || there > 3 * now ? now : Math.max(now, there);
    }

    private static double lowest(UnitWear wear, List<Tested> drawn) {
        double low = drawn.stream()
                .mapToDouble(tested -> fraction(tested) - COVERAGE * uncertainty(tested))
                .min()
                .orElse(0);
        return Math.max(0, Math.floor(10 * (Math.min(low, wear.asked().threshold()) - 0.05)) / 10);
    }

    private static double highest(List<Tested> drawn) {
        double high = drawn.stream()
                .mapToDouble(tested -> fraction(tested) + COVERAGE * uncertainty(tested))
                .max()
                .orElse(1);
        return Math.ceil(10 * (Math.max(high, 1.02) + 0.01)) / 10;
    }

    private static void lines(Graph graph, UnitWear wear, double now, double fromX, double toX) {
        if (wear.trend().slopePerHour() == null) {
            return;
        }
        double begin = wear.line().tests().stream()
                .filter(tested -> tested.use() == Tested.Use.COUNTS)
                .mapToDouble(WearSheet::hours)
                .min()
                .orElse(fromX);
        double[] x = Graph.places(begin, toX, STEPS);
        List<Double> hours = new ArrayList<>();
        Arrays.stream(x).forEach(hours::add);
        List<CapacityTrend.At> at = wear.line().at(wear.asked(), now, hours).at();
        graph.band("next", x, values(at, CapacityTrend.At::readingLower), values(at, CapacityTrend.At::readingUpper));
        graph.band("band", x, values(at, CapacityTrend.At::meanLower), values(at, CapacityTrend.At::meanUpper));
        graph.line("worn", x, values(at, CapacityTrend.At::fit));
        RobustLine robust = wear.trend().robust();
        if (wear.asked().robust() && robust != null) {
            @Nullable Double[] y = new Double[x.length];
            for (int i = 0; i < x.length; i++) {
                y[i] = robust.intercept() + robust.slopePerHour() * x[i];
            }
            graph.line("jobline", x, y);
        }
    }

    private static @Nullable Double[] values(
            List<CapacityTrend.At> at, Function<CapacityTrend.At, @Nullable Double> value) {
        @Nullable Double[] values = new Double[at.size()];
        for (int i = 0; i < values.length; i++) {
            values[i] = value.apply(at.get(i));
        }
        return values;
    }

    private static void dot(Graph graph, Tested tested, String number) {
        HoursAt hours = tested.hours();
        boolean loose = hours != null && hours.loose();
        boolean counts = tested.use() == Tested.Use.COUNTS;
        double at = hours(tested);
        graph.dot(
                counts ? "pt" : "pt pale",
                at,
                fraction(tested),
                COVERAGE * uncertainty(tested),
                loose && hours != null ? hours.least() : at,
                loose && hours != null ? hours.most() : at);
        graph.word(counts ? "halo strong" : "halo pale", at, fraction(tested), 7, -6, number);
    }

    private static double hours(Tested tested) {
        return tested.hours() == null ? 0 : tested.hours().hours();
    }

    private static double fraction(Tested tested) {
        ComparedTest test = tested.test();
        return test.fraction() == null ? 0 : test.fraction();
    }

    private static double uncertainty(Tested tested) {
        Double uncertainty = tested.test().standardUncertainty();
        return uncertainty == null ? 0 : uncertainty;
    }
}
