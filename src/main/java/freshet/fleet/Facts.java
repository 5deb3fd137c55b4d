package freshet.fleet;

import freshet.findings.Hold;
import freshet.findings.Waiver;
import freshet.happenings.HappeningKind;
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
 * @param hardUse the last dry run, or use in sewage, salt water or chemicals, that stands
 * @param owed the opening or check after repair whose days have begun and that is not signed, the one due first
 * @param unchecked the test of each month that is late, or the check after a storm or a hire that is to do; the worst of them
 * @param electricalTaskId an electrical test that is to do
 * @param nextOpeningOn the first day of the next opening
 * @param nextLateAfter the last day on which the next test of each month is not late
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
        @Nullable HardUse hardUse,
        @Nullable Owed owed,
        @Nullable Unchecked unchecked,
        @Nullable Long electricalTaskId,
        @Nullable LocalDate nextOpeningOn,
        @Nullable LocalDate nextLateAfter,
        @Nullable LocalDate nextDueOn,
        int openTasks,
        @Nullable Capacity capacity) {

    record OpenFinding(
            long id,
            int severity,
            String what,
            Instant openedAt,
            @Nullable Waiver waiver) {}

    record HardUse(HappeningKind kind, Instant at) {}

    record Proof(Instant at, long recordId) {}

    /** Work that is to do; {@code late} once its days of grace are over too. */
    record Owed(long taskId, String title, LocalDate dueOn, boolean late) {}

    /** Such work that keeps a pump from being simply ready; {@code afterEvent} when something happened to the pump, not only time. */
    record Unchecked(Owed check, boolean afterEvent) {}
}
