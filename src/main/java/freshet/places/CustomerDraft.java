package freshet.places;

import org.jspecify.annotations.Nullable;

/** What is to stand in the register about a customer. */
public record CustomerDraft(
        String name, @Nullable String phone, @Nullable String note) {}
