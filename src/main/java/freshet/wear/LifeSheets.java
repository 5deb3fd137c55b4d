package freshet.wear;

import freshet.reliability.Lives;
import freshet.reliability.ProductLimit;
import freshet.reliability.Recurrence;
import freshet.reliability.WeibullFit;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** Draws how many units of a fleet still run without a failure, and how many failures a unit has had, against run hours. */
final class LifeSheets {

    /** More steps than this no eye tells apart on a sheet; more rows than that nobody reads. */
    private static final int MOST_STEPS = 400;

    private static final int MOST_ROWS = 24;
    private static final int CURVE_STEPS = 80;

    private LifeSheets() {}

    /** Survival with its limits and the fitted law; null without a failure. */
    static @Nullable Graph survival(@Nullable Lives lives, String productLimit, String weibull) {
        if (lives == null || lives.productLimit().isEmpty()) {
            return null;
        }
        List<ProductLimit.Step> steps = some(lives.productLimit(), MOST_STEPS);
        double far = 1.15 * steps.get(steps.size() - 1).hours();
        Graph graph = new Graph(0, Math.max(far, 1), 0, 1.05, true);
        double[] x = hours(steps, ProductLimit.Step::hours);
        graph.stepBand(
                "band",
                x,
                values(steps, ProductLimit.Step::lower, 1.0),
                values(steps, ProductLimit.Step::upper, 1.0),
                far);
        WeibullFit fit = lives.weibull();
        if (fit.shape() != null && fit.scaleHours() != null) {
            double[] at = Graph.places(0, far, CURVE_STEPS);
            @Nullable Double[] survival = new Double[at.length];
            for (int i = 0; i < at.length; i++) {
                survival[i] = Math.exp(-Math.pow(at[i] / fit.scaleHours(), fit.shape()));
            }
            graph.line("jobline", at, survival).word("halo strong end", far, valueAt(fit, far), -6, 18, weibull);
        }
        graph.steps("step", x, values(steps, step -> (Double) step.survival(), 1.0), far);
        return graph.word("halo strong", 0, 1, 8, 18, productLimit);
    }

    private static double valueAt(WeibullFit fit, double hours) {
        return fit.shape() == null || fit.scaleHours() == null
                ? 0
                : Math.exp(-Math.pow(hours / fit.scaleHours(), fit.shape()));
    }

    /** Mean cumulative number of failures with its limits; null without a failure. */
    static @Nullable Graph recurrence(@Nullable Recurrence recurrence) {
        if (recurrence == null || recurrence.table().isEmpty()) {
            return null;
        }
        List<Recurrence.Row> rows = some(recurrence.table(), MOST_STEPS);
        Recurrence.Row last = rows.get(rows.size() - 1);
        double far = Math.max(1, 1.1 * last.hours());
        double high = 1.1
                * (last.upper() == null ? last.meanCumulative() : Math.min(last.upper(), 3 * last.meanCumulative()));
        Graph graph = new Graph(0, far, 0, high, false);
        double[] x = hours(rows, Recurrence.Row::hours);
        graph.stepBand(
                "band", x, values(rows, Recurrence.Row::lower, 0.0), values(rows, Recurrence.Row::upper, 0.0), far);
        return graph.steps("step", x, values(rows, row -> (Double) row.meanCumulative(), 0.0), far);
    }

    /** The rows of a table short enough to be read: all, or evenly chosen ones with the last. */
    static <T> List<T> rows(List<T> all) {
        return some(all, MOST_ROWS);
    }

    private static <T> List<T> some(List<T> all, int most) {
        if (all.size() <= most) {
            return all;
        }
        List<T> some = new ArrayList<>();
        for (int i = 1; i <= most; i++) {
            some.add(all.get((int) ((long) i * all.size() / most) - 1));
        }
        return some;
    }

    /** The hours of the steps, with hour 0 before them. */
    private static <T> double[] hours(List<T> steps, Function<T, Double> hours) {
        double[] x = new double[steps.size() + 1];
        for (int i = 0; i < steps.size(); i++) {
            x[i + 1] = hours.apply(steps.get(i));
        }
        return x;
    }

    private static <T> @Nullable Double[] values(List<T> steps, Function<T, @Nullable Double> value, double atNew) {
        @Nullable Double[] values = new Double[steps.size() + 1];
        values[0] = atNew;
        for (int i = 0; i < steps.size(); i++) {
            values[i + 1] = value.apply(steps.get(i));
        }
        return values;
    }
}
