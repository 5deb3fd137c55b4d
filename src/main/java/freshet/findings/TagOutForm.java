package freshet.findings;

import org.jspecify.annotations.Nullable;

/** What was typed to tag a unit out. */
record TagOutForm(@Nullable String why) {}
