package freshet.readings;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import org.jspecify.annotations.Nullable;

/** What a meter counts. */
public enum MeterKind {
    /** Hours on load; never more than the clock's, but for 2 % of a meter that runs fast (common practice, no source). */
    RUN_HOURS("1.02", "0.1"),
    /** Starts of the motor; more than one a minute is no pump's work (common practice, no source). */
    STARTS("60", "1");

    private static final BigDecimal MILLIS_PER_HOUR = BigDecimal.valueOf(3_600_000);

    private final BigDecimal mostPerHour;
    private final BigDecimal lastWheel;

    MeterKind(String mostPerHour, String lastWheel) {
        this.mostPerHour = new BigDecimal(mostPerHour);
        this.lastWheel = new BigDecimal(lastWheel);
    }

    /**
     * The most that a meter can have counted in a time; at least one step of its last wheel, which may turn at any moment, unless no
     * time has passed.
     */
    BigDecimal mostIn(Duration time) {
        BigDecimal most = BigDecimal.valueOf(time.toMillis())
                .multiply(mostPerHour)
                .divide(MILLIS_PER_HOUR, 2, RoundingMode.CEILING);
        return time.isZero() ? most : most.max(lastWheel);
    }

    /** The kind of this name as a form sends it; the hours when it sends none. */
    static MeterKind named(@Nullable String name) {
        return STARTS.name().equals(name) ? STARTS : RUN_HOURS;
    }

    /** Decimals that the meter may show. */
    int decimals() {
        return this == STARTS ? 0 : 2;
    }
}
