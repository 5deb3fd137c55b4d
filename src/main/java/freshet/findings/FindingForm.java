package freshet.findings;

import freshet.people.Typed;
import org.jspecify.annotations.Nullable;

/** What was typed about a finding. */
record FindingForm(
        @Nullable String what,
        @Nullable String severity,
        @Nullable String mode,
        @Nullable String cause) {

    static final FindingForm BLANK = new FindingForm(null, null, null, null);

    FindingDraft draft(long unitId) {
        return FindingDraft.about(unitId, Choices.severity(severity), Typed.textOrEmpty(what))
                .failed(Choices.one(FailureMode.class, mode), Choices.one(Cause.class, cause));
    }
}
