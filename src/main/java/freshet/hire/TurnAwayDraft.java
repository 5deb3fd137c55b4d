package freshet.hire;

import freshet.pumps.PumpKind;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** Somebody who asked at a yard and went without a pump; {@code on} null is today there. */
public record TurnAwayDraft(
        long siteId,
        @Nullable LocalDate on,
        TurnAwayReason reason,
        @Nullable PumpKind kind,
        @Nullable String note) {}
