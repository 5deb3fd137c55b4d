package freshet.repairs;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** A repair that was done: how the pump was found and left, and on which day at the site, null for today. */
public record RepairDone(
        @Nullable String asFound,
        @Nullable String asLeft,
        @Nullable LocalDate on) {}
