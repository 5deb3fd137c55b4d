package freshet.findings;

import freshet.people.Typed;
import org.jspecify.annotations.Nullable;

/** What was typed about a finding. */
record FindingForm(@Nullable String what, @Nullable String severity) {

    FindingDraft draft(long unitId) {
        int chosen = severity != null && severity.matches("[0-4]") ? Integer.parseInt(severity) : -1;
        return FindingDraft.about(unitId, chosen, Typed.textOrEmpty(what));
    }
}
