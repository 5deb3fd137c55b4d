package freshet.wear;

import org.jspecify.annotations.Nullable;

/**
 * The wear of a unit in one sentence: {@code percentPer100h} is lost in 100 hours, {@code reaching} is null unless it is wearing and in care.
 *
 * @param tests that count
 */
public record WearSaying(
        long unitId,
        WearWord word,
        int tests,
        @Nullable Double percentPer100h,
        double threshold,
        @Nullable Reaching reaching) {}
