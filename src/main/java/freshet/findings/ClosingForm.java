package freshet.findings;

import org.jspecify.annotations.Nullable;

/** What was typed to close a finding. */
record ClosingForm(@Nullable String how, @Nullable String version) {

    int opened() {
        return Choices.version(version);
    }
}
