package freshet.findings;

import freshet.people.Typed;
import org.jspecify.annotations.Nullable;

/** What was typed to judge a finding otherwise. */
record JudgingForm(
        @Nullable String mode,
        @Nullable String cause,
        @Nullable String severity,
        @Nullable String why,
        @Nullable String version) {

    static JudgingForm of(Finding finding) {
        return new JudgingForm(
                finding.mode() == null ? null : finding.mode().name(),
                finding.cause() == null ? null : finding.cause().name(),
                String.valueOf(finding.severity()),
                null,
                String.valueOf(finding.version()));
    }

    Judging judging() {
        return new Judging(
                Choices.one(FailureMode.class, mode),
                Choices.one(Cause.class, cause),
                Choices.severity(severity),
                Typed.text(why));
    }
}
