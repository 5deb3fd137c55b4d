package freshet.readings;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * How a unit has been worked, from its two meters, beside what its model allows. Every figure is the mean of a stretch between two
 * readings: the worst single hour in it can only have been worse.
 *
 * @param whole from the first to the last moment of which enough is known
 * @param busiest the stretch, of an hour or more, with the most starts an hour
 * @param shortestRuns the stretch with the fewest running minutes a start; null when hours and starts were never read together
 * @param mostStartsPerHour the model's limit, where its sheet gives one
 * @param leastMinutesPerStart the model's limit, where its sheet gives one
 */
public record DutyCycle(
        Stretch whole,
        Stretch busiest,
        @Nullable Stretch shortestRuns,
        @Nullable Double mostStartsPerHour,
        @Nullable Double leastMinutesPerStart) {

    /**
     * What happened between two readings.
     *
     * @param runHours null when the hours were not read at both ends
     */
    public record Stretch(
            Instant from, Instant to, @Nullable BigDecimal runHours, BigDecimal starts) {

        /** Starts by the clock's hours, running or not. */
        public double startsPerHour() {
            return starts.doubleValue() * 3_600_000 / Duration.between(from, to).toMillis();
        }

        /** Running minutes a start; null without hours, or without a start. */
        public @Nullable Double minutesPerStart() {
            return runHours == null || starts.signum() == 0
                    ? null
                    : Double.valueOf(60 * runHours.doubleValue() / starts.doubleValue());
        }
    }

    public boolean tooManyStarts() {
        return mostStartsPerHour != null && busiest.startsPerHour() > mostStartsPerHour;
    }

    public boolean runsTooShort() {
        Double minutes = shortestRuns == null ? null : shortestRuns.minutesPerStart();
        return leastMinutesPerStart != null && minutes != null && minutes < leastMinutesPerStart;
    }
}
