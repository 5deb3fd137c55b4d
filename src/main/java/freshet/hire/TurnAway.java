package freshet.hire;

import freshet.pumps.PumpKind;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** Somebody who asked for a pump and went without one; the kind of pump is null when it was not said. */
public record TurnAway(
        long siteId,
        String siteName,
        LocalDate on,
        TurnAwayReason reason,
        @Nullable PumpKind kind,
        @Nullable String note,
        @Nullable String notedByName) {}
