package freshet.readings;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import org.jspecify.annotations.Nullable;

/**
 * What somebody read on a meter, and when.
 *
 * @param value what it showed: hours with up to two decimals, or whole starts; 0 to 9 999 999 999
 * @param rolledOver it passed its highest value since the reading before
 * @param rollsOverAt the value at which it starts again from 0; needed once, with the first rollover of a meter
 */
public record ReadingDraft(
        long unitId,
        MeterKind kind,
        Instant at,
        BigDecimal value,
        boolean rolledOver,
        @Nullable BigDecimal rollsOverAt,
        @Nullable String note) {

    public ReadingDraft {
        at = at.truncatedTo(ChronoUnit.MICROS); // as fine as it is kept
    }

    /** A plain reading. */
    public static ReadingDraft of(long unitId, MeterKind kind, Instant at, BigDecimal value) {
        return new ReadingDraft(unitId, kind, at, value, false, null, null);
    }
}
