package freshet.findings;

import org.jspecify.annotations.Nullable;

/** What somebody says about a finding later: how it failed, from what, and how bad it is; {@code why} is needed when that changes. */
public record Judging(
        @Nullable FailureMode mode,
        @Nullable Cause cause,
        int severity,
        @Nullable String why) {}
