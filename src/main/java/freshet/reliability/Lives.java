package freshet.reliability;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Lives of like parts, some still running: the share that survives without any assumed law, and a Weibull law fitted to the same lives.
 *
 * @param n lives
 * @param failures of them ended by failure, the others are right censored
 * @param medianHours first hours at which the product limit is at or below one half; null when it never is
 * @param medianInterval the same for its log-log limits (Brookmeyer and Crowley 1982)
 * @param productLimit one step for each time of failure, rising
 * @param weibull the fitted law
 */
public record Lives(
        int n,
        int failures,
        @Nullable Double medianHours,
        @Nullable Interval medianInterval,
        List<ProductLimit.Step> productLimit,
        WeibullFit weibull) {

    /** Most lives in one calculation. */
    public static final int MOST_LIVES = 1_000_000;

    /**
     * One life.
     *
     * @param hours age at failure, or age so far when it runs on: 0, or 1e-6 to 1e9 h
     * @param failed whether it ended by failure
     * @param entryHours age at which it came under watch, below hours, or null when watched from new
     */
    public record Life(
            double hours, boolean failed, @Nullable Double entryHours) {

        public Life(double hours, boolean failed) {
            this(hours, failed, null);
        }

        boolean enteredLate() {
            return entryHours != null && entryHours > 0;
        }

        private void check(String field) {
            Limits.lifeHours(field + ".hours", hours);
            if (entryHours == null) {
                return;
            }
            Limits.lifeHours(field + ".entryHours", entryHours);
            if (enteredLate() && entryHours >= hours) {
                throw new OutOfRange(
                        field + ".entryHours",
                        Limits.withUnit(entryHours, "h") + " is not below the life's " + Limits.withUnit(hours, "h"));
            }
        }
    }

    /**
     * Estimates survival from lives.
     *
     * @param lives 1 to 1 000 000, in any order
     * @param level of confidence of all limits, 0.5 to 0.999999
     * @throws OutOfRange for a number outside its range
     */
    public static Lives of(List<Life> lives, double level) {
        List<Life> checked = Limits.list("lives", lives, 1, MOST_LIVES);
        for (int i = 0; i < checked.size(); i++) {
            checked.get(i).check("lives[" + i + "]");
        }
        Limits.level(level);
        ProductLimit limit = ProductLimit.of(checked, level);
        int failures = (int) checked.stream().filter(Life::failed).count();
        return new Lives(
                checked.size(),
                failures,
                limit.median(),
                limit.medianInterval(),
                limit.steps(),
                WeibullFit.of(checked, level));
    }
}
