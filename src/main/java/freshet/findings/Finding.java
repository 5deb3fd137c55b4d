package freshet.findings;

import freshet.people.Competence;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import org.jspecify.annotations.Nullable;

/**
 * A judged result that needs something: severity 0 note, 1 watch, 2 fix at next service, 3 fix before next use, 4 stop, danger.
 * {@code competence} is who may close it, null for anybody; {@code zone} is that of the place where the unit stands. {@code mode}
 * and {@code cause} are null as long as nobody has said; {@code waiver} is the last that still fits the severity, ended or not.
 */
public record Finding(
        long id,
        long unitId,
        String tag,
        ZoneId zone,
        @Nullable Long recordId,
        @Nullable Long checkLineId,
        int severity,
        String what,
        @Nullable FailureMode mode,
        @Nullable Cause cause,
        @Nullable Competence competence,
        Instant openedAt,
        @Nullable String openedByName,
        @Nullable Instant closedAt,
        @Nullable String closedByName,
        @Nullable String closedHow,
        @Nullable Waiver waiver,
        int version) {

    /** From this severity on a unit is not to be used until the finding is closed. */
    public static final int STOPS_USE = 3;
    /** Cord, earth, water in the winding: it is not issued, nor plugged in. */
    public static final int DANGER = 4;

    public boolean open() {
        return closedAt == null;
    }

    public boolean stopsUse() {
        return severity >= STOPS_USE;
    }

    /** The waiver that keeps it off the list of work on this day, null when none does; it still counts in readiness. */
    public @Nullable Waiver putOffOn(LocalDate today) {
        return open() && waiver != null && waiver.runsOn(today) ? waiver : null;
    }
}
