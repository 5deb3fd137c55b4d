package freshet.fleet;

import freshet.readings.Capacity;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import org.jspecify.annotations.Nullable;

/** The summary row of a unit, worked out from its facts. */
record Summary(
        long unitId,
        Readiness readiness,
        @Nullable Double remainingFraction,
        @Nullable Double expandedUncertainty,
        @Nullable Double statedAtHeadM,
        @Nullable Instant testedAt,
        @Nullable LocalDate nextDueOn,
        int openTasks) {

    static Summary of(Facts facts, LocalDate today) {
        Capacity capacity = facts.capacity();
        return new Summary(
                facts.unitId(),
                ReadinessRules.judge(facts, today),
                capacity == null ? null : capacity.fraction(),
                capacity == null ? null : capacity.expandedUncertainty(),
                capacity == null ? null : capacity.headM(),
                capacity == null ? null : capacity.testedAt().truncatedTo(ChronoUnit.MICROS),
                facts.nextDueOn(),
                facts.openTasks());
    }
}
