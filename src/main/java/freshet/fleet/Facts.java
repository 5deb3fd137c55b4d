package freshet.fleet;

import freshet.findings.Hold;
import freshet.findings.Waiver;
import freshet.readings.Capacity;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What readiness is judged from, as the rows of the other rooms give it. Times are those of the last fact of each kind; null is never.
 *
 * @param engine whether an engine drives it, which has no cord that anything could prove
 * @param provable whether there is a checklist that proves this kind of pump
 * @param holds those that are open
 * @param provedAt the last standing record of a checklist that proves
 * @param laidUpAt the last standing record of a checklist that lays up
 * @param electricalAt the last standing record of an electrical test: no line for such a person failed or was left that is required
 * @param mendedAt the last closing of a finding that stopped use
 * @param owed the opening or check after repair whose days have begun and that is not signed, the one due first
 * @param electricalTaskId an electrical test that is to do
 * @param nextOpeningOn the first day of the next opening
 */
record Facts(
        long unitId,
        ZoneId zone,
        boolean provable,
        boolean engine,
        List<OpenFinding> findings,
        List<Hold> holds,
        @Nullable Proof provedAt,
        @Nullable Instant laidUpAt,
        @Nullable Instant electricalAt,
        @Nullable Instant mendedAt,
        @Nullable Owed owed,
        @Nullable Long electricalTaskId,
        @Nullable LocalDate nextOpeningOn,
        @Nullable LocalDate nextDueOn,
        int openTasks,
        @Nullable Capacity capacity) {

    record OpenFinding(
            long id,
            int severity,
            String what,
            Instant openedAt,
            @Nullable Waiver waiver) {}

    record Proof(Instant at, long recordId) {}

    record Owed(long taskId, String title, LocalDate dueOn) {}
}
