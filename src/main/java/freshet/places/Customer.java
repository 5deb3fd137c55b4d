package freshet.places;

import org.jspecify.annotations.Nullable;

/** Somebody whose pumps or places we look after. */
public record Customer(
        long id,
        String name,
        @Nullable String phone,
        @Nullable String note,
        int version) {}
