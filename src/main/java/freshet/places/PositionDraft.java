package freshet.places;

import org.jspecify.annotations.Nullable;

/** What is to stand in the register about a position. */
public record PositionDraft(
        long siteId,
        String name,
        PositionKind kind,
        @Nullable String note) {}
