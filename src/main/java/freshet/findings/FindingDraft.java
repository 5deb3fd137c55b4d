package freshet.findings;

import org.jspecify.annotations.Nullable;

/** A finding to be; {@code recordId} and {@code checkLineId} name the signed check that made it, if one did. */
public record FindingDraft(
        long unitId,
        @Nullable Long recordId,
        @Nullable Long checkLineId,
        int severity,
        String what,
        @Nullable FailureMode mode,
        @Nullable Cause cause) {

    /** One of which nobody has said yet how it failed and from what. */
    public FindingDraft(long unitId, @Nullable Long recordId, @Nullable Long checkLineId, int severity, String what) {
        this(unitId, recordId, checkLineId, severity, what, null, null);
    }

    /** One that somebody wrote without a check. */
    public static FindingDraft about(long unitId, int severity, String what) {
        return new FindingDraft(unitId, null, null, severity, what);
    }

    /** The same, said how it failed and from what. */
    public FindingDraft failed(@Nullable FailureMode itsMode, @Nullable Cause itsCause) {
        return new FindingDraft(unitId, recordId, checkLineId, severity, what, itsMode, itsCause);
    }
}
