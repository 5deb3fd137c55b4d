package freshet.findings;

import org.jspecify.annotations.Nullable;

/** A finding to be; {@code recordId} and {@code checkLineId} name the signed check that made it, if one did. */
public record FindingDraft(
        long unitId, @Nullable Long recordId, @Nullable Long checkLineId, int severity, String what) {

    /** One that somebody wrote without a check. */
    public static FindingDraft about(long unitId, int severity, String what) {
        return new FindingDraft(unitId, null, null, severity, what);
    }
}
