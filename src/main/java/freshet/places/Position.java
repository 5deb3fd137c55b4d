package freshet.places;

import org.jspecify.annotations.Nullable;

/** A pit, well or duty at a site, which stays while pumps come and go. */
public record Position(
        long id,
        long siteId,
        String name,
        PositionKind kind,
        @Nullable String note,
        int version) {}
