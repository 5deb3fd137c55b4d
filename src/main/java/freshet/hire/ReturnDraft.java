package freshet.hire;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A unit that came back.
 *
 * @param inAt to the minute
 * @param cord what is wrong with its cord, plug or earth, in words; null when they are whole
 * @param kit how many of each piece came back, by its place in the list; a piece that is not in it came back whole
 */
public record ReturnDraft(
        Instant inAt,
        @Nullable BigDecimal hours,
        @Nullable Integer fuel,
        @Nullable String condition,
        Liquid liquid,
        boolean ranDry,
        @Nullable String cord,
        Map<Integer, Integer> kit) {

    public ReturnDraft {
        inAt = inAt.truncatedTo(ChronoUnit.MINUTES);
    }
}
