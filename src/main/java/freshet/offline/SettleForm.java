package freshet.offline;

import org.jspecify.annotations.Nullable;

/** How a conflict is to be settled, and why where that has to be said. */
record SettleForm(@Nullable String how, @Nullable String why) {}
