package freshet.readings;

import java.math.BigDecimal;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * Something about a meter that somebody wrote down and that still stands.
 *
 * @param value what it showed; on a meter that was fitted, its first value
 * @param lastOnOld the last value of the meter that it took the place of
 * @param rollsOverAt said once for each meter, on its first fact, where it is known
 */
public record MeterFact(
        long unitId,
        MeterKind kind,
        What what,
        Instant at,
        BigDecimal value,
        @Nullable BigDecimal lastOnOld,
        boolean rolledOver,
        @Nullable BigDecimal rollsOverAt,
        @Nullable String note) {

    /** What was done. */
    public enum What {
        READ,
        FITTED,
        SWAPPED
    }
}
