package freshet.reliability;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The product-limit estimate of survival (Kaplan and Meier, J. American Statistical Association 53, 1958; general knowledge, not re-read), with
 * Greenwood's standard error and log-log limits.
 *
 * <p>A life is at risk at t from its late entry, exclusive, to its end, inclusive: failures come before censorings of the same hours.
 */
public record ProductLimit(List<Step> steps) {

    /** Rounding of a product of many fractions must not hide that it is one half. */
    private static final double HALF = 0.5 + 1e-12;

    /**
     * The curve at one time of failure. Standard error and limits are null once survival is 0.
     *
     * @param atRisk lives under watch just before
     */
    public record Step(
            double hours,
            int atRisk,
            int failures,
            double survival,
            @Nullable Double standardError,
            @Nullable Double lower,
            @Nullable Double upper) {}

    static ProductLimit of(List<Lives.Life> lives, double level) {
        double z = Quantiles.normalTwoSided(level);
        double[] failed = sorted(lives, true);
        double[] censored = sorted(lives, false);
        double[] entries = lives.stream()
                .filter(Lives.Life::enteredLate)
                .mapToDouble(life -> life.entryHours() == null ? 0 : life.entryHours())
                .sorted()
                .toArray();
        List<Step> steps = new ArrayList<>();
        int atRisk = lives.size() - entries.length;
        int entered = 0;
        int left = 0;
        double survival = 1;
        double greenwood = 0;
        for (int i = 0; i < failed.length; ) {
            double hours = failed[i];
            while (left < censored.length && censored[left] < hours) {
                left++;
                atRisk--;
            }
            while (entered < entries.length && entries[entered] < hours) {
                entered++;
                atRisk++;
            }
            int failures = 0;
            while (i < failed.length && failed[i] == hours) {
                failures++;
                i++;
            }
            survival *= (double) (atRisk - failures) / atRisk;
            greenwood += failures / ((double) atRisk * (atRisk - failures));
            steps.add(step(hours, atRisk, failures, survival, greenwood, z));
            atRisk -= failures;
        }
        return new ProductLimit(List.copyOf(steps));
    }

    private static Step step(double hours, int atRisk, int failures, double survival, double greenwood, double z) {
        if (survival == 0) {
            return new Step(hours, atRisk, failures, 0, null, null, null);
        }
        double se = Math.sqrt(greenwood);
        double power = Math.exp(z * se / Math.abs(Math.log(survival)));
        return new Step(
                hours,
                atRisk,
                failures,
                survival,
                survival * se,
                Math.pow(survival, power),
                Math.pow(survival, 1 / power));
    }

    private static double[] sorted(List<Lives.Life> lives, boolean failed) {
        double[] hours = lives.stream()
                .filter(life -> life.failed() == failed)
                .mapToDouble(Lives.Life::hours)
                .toArray();
        Arrays.sort(hours);
        return hours;
    }

    @Nullable
    Double median() {
        for (Step step : steps) {
            if (step.survival <= HALF) {
                return step.hours;
            }
        }
        return null;
    }

    /** Hours at which the lower and the upper limit come to one half; null when neither does. */
    @Nullable
    Interval medianInterval() {
        Double lower = null;
        Double upper = null;
        for (Step step : steps) {
            if (lower == null && step.lower != null && step.lower <= HALF) {
                lower = step.hours;
            }
            if (upper == null && step.upper != null && step.upper <= HALF) {
                upper = step.hours;
            }
        }
        return lower == null && upper == null ? null : new Interval(lower, upper);
    }
}
