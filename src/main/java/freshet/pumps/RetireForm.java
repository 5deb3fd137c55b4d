package freshet.pumps;

import org.jspecify.annotations.Nullable;

/** What was typed to retire a unit. */
record RetireForm(
        @Nullable String retiredOn,
        @Nullable String retiredWhy,
        @Nullable Integer version) {}
