package freshet.checklists;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** One entry in the list of a checklist's versions; {@code publishedBy} is null for the version that the product brought. */
public record Edition(
        int number,
        Instant publishedAt,
        @Nullable String publishedBy,
        @Nullable String note,
        int lines) {}
