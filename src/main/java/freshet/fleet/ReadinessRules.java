package freshet.fleet;

import static freshet.fleet.Thresholds.CAPACITY_FULL;
import static freshet.fleet.Thresholds.CAPACITY_GONE;
import static freshet.fleet.Thresholds.CAPACITY_LOW;
import static freshet.fleet.Thresholds.ELECTRICAL_MONTHS;
import static freshet.fleet.Thresholds.LIMITS_USE;
import static freshet.fleet.Thresholds.PROOF_MONTHS;

import freshet.findings.Finding;
import freshet.findings.Hold;
import freshet.findings.Waiver;
import freshet.readings.Capacity;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Judges how ready a unit is on a day, with every reason: untested, stale or unknown is never ready. */
final class ReadinessRules {

    private static final Comparator<Reason> WORST_FIRST = Comparator.comparing(Reason::word)
            .thenComparing(Reason::severity, Comparator.nullsLast(Comparator.reverseOrder()))
            .thenComparing(Reason::kind)
            .thenComparing(Reason::subjectId, Comparator.nullsLast(Comparator.naturalOrder()));

    private final Facts facts;
    private final LocalDate today;
    private final List<Reason> reasons = new ArrayList<>();

    private ReadinessRules(Facts facts, LocalDate today) {
        this.facts = facts;
        this.today = today;
    }

    static Readiness judge(Facts facts, LocalDate today) {
        return new ReadinessRules(facts, today).judge();
    }

    private Readiness judge() {
        facts.holds().forEach(this::held);
        facts.findings().forEach(this::finding);
        if (facts.provable()) {
            opening();
            unchecked();
            performance();
            if (!facts.engine()) {
                electrical();
            }
        } else {
            reasons.add(Reason.of(ReasonKind.NO_CHECKLIST, Word.UNKNOWN));
        }
        if (facts.capacity() != null) {
            capacity(facts.capacity());
        }
        reasons.sort(WORST_FIRST);
        Word word = reasons.stream()
                .map(Reason::word)
                .min(Comparator.naturalOrder())
                .orElse(Word.UNKNOWN);
        return new Readiness(word, List.copyOf(reasons), readyUntil(word));
    }

    private void held(Hold hold) {
        reasons.add(new Reason(
                ReasonKind.HELD,
                Word.NOT_READY,
                day(hold.since()),
                null,
                hold.id(),
                null,
                null,
                null,
                new Reason.Held(hold.kind(), hold.why(), hold.byName()),
                null));
    }

    private void finding(Facts.OpenFinding finding) {
        Waiver waiver = finding.waiver();
        Word word = finding.severity() >= Finding.STOPS_USE
                ? Word.NOT_READY
                : finding.severity() >= LIMITS_USE ? Word.LIMITS : Word.READY;
        reasons.add(new Reason(
                ReasonKind.FINDING,
                word,
                day(finding.openedAt()),
                null,
                finding.id(),
                finding.severity(),
                finding.what(),
                null,
                null,
                waiver == null || !waiver.runsOn(today) ? null : new Reason.PutOff(waiver.until(), waiver.by())));
    }

    /** What is owed now, and whether the pump still lies where it was laid up. */
    private void opening() {
        Facts.Owed owed = facts.owed();
        if (owed != null) {
            reasons.add(about(owed, owed.late() ? ReasonKind.OPENING_LATE : ReasonKind.OPENING_DUE, Word.UNKNOWN));
        }
        Instant proved = facts.provedAt() == null ? null : facts.provedAt().at();
        if (facts.laidUpAt() != null && !after(proved, facts.laidUpAt())) {
            reasons.add(Reason.on(ReasonKind.LAID_UP, Word.UNKNOWN, day(facts.laidUpAt()), null, null));
        }
    }

    private static Reason about(Facts.Owed work, ReasonKind kind, Word word) {
        return new Reason(kind, word, work.dueOn(), null, work.taskId(), null, work.title(), null, null, null);
    }

    /** What happened may have harmed it: a late check of that is no longer a limit but something that nobody knows. */
    private void unchecked() {
        Facts.Unchecked unchecked = facts.unchecked();
        if (unchecked != null) {
            boolean late = unchecked.check().late();
            reasons.add(about(
                    unchecked.check(),
                    late ? ReasonKind.CHECK_LATE : ReasonKind.CHECK_DUE,
                    late && unchecked.afterEvent() ? Word.UNKNOWN : Word.LIMITS));
        }
    }

    private void performance() {
        Instant proved = lastPerformance();
        if (proved == null) {
            reasons.add(Reason.of(ReasonKind.NEVER_PROVED, Word.UNKNOWN));
            return;
        }
        if (facts.mendedAt() != null && !after(proved, facts.mendedAt())) {
            reasons.add(Reason.on(ReasonKind.MENDED_NOT_PROVED, Word.UNKNOWN, day(facts.mendedAt()), null, null));
        }
        Facts.HardUse hard = facts.hardUse();
        if (hard != null && !after(proved, hard.at())) {
            ReasonKind kind = ReasonKind.valueOf(hard.kind().name());
            reasons.add(Reason.on(kind, Word.UNKNOWN, day(hard.at()), null, null));
        }
        Long record = facts.provedAt() == null ? null : facts.provedAt().recordId();
        LocalDate until = day(proved).plusMonths(PROOF_MONTHS);
        boolean holds = !until.isBefore(today);
        reasons.add(Reason.on(
                holds ? ReasonKind.PROVED : ReasonKind.PROOF_OLD,
                holds ? Word.READY : Word.UNKNOWN,
                day(proved),
                until,
                record));
    }

    /** A flow test proves what the pump gives as an opening does. */
    private @Nullable Instant lastPerformance() {
        return Stream.of(
                        facts.provedAt() == null ? null : facts.provedAt().at(),
                        facts.capacity() == null ? null : facts.capacity().testedAt())
                .filter(Objects::nonNull)
                .max(Comparator.naturalOrder())
                .orElse(null);
    }

    private void electrical() {
        if (facts.electricalTaskId() != null) {
            reasons.add(new Reason(
                    ReasonKind.ELECTRICAL_LEFT,
                    Word.UNKNOWN,
                    null,
                    null,
                    facts.electricalTaskId(),
                    null,
                    null,
                    null,
                    null,
                    null));
        }
        if (facts.electricalAt() == null) {
            reasons.add(Reason.of(ReasonKind.ELECTRICAL_NEVER, Word.UNKNOWN));
            return;
        }
        LocalDate on = day(facts.electricalAt());
        LocalDate until = on.plusMonths(ELECTRICAL_MONTHS);
        boolean holds = !until.isBefore(today);
        reasons.add(Reason.on(
                holds ? ReasonKind.ELECTRICAL : ReasonKind.ELECTRICAL_OLD,
                holds ? Word.READY : Word.UNKNOWN,
                on,
                until,
                null));
    }

    private void capacity(Capacity capacity) {
        double fraction = capacity.fraction();
        ReasonKind kind = fraction >= CAPACITY_FULL
                ? ReasonKind.CAPACITY
                : fraction >= CAPACITY_LOW
                        ? ReasonKind.CAPACITY_SHORT
                        : fraction >= CAPACITY_GONE ? ReasonKind.CAPACITY_LOW : ReasonKind.CAPACITY_GONE;
        Word word = switch (kind) {
            case CAPACITY -> Word.READY;
            case CAPACITY_GONE -> Word.NOT_READY;
            default -> Word.LIMITS;
        };
        Reason.Figure figure =
                new Reason.Figure(fraction, capacity.expandedUncertainty(), capacity.headM(), capacity.tests());
        reasons.add(new Reason(
                kind, word, day(capacity.testedAt()), null, capacity.testId(), null, null, figure, null, null));
    }

    private @Nullable LocalDate readyUntil(Word word) {
        if (word.worseThan(Word.LIMITS)) {
            return null;
        }
        Stream<LocalDate> ends = reasons.stream().map(Reason::until).filter(Objects::nonNull);
        Stream<LocalDate> opening = Stream.ofNullable(facts.nextOpeningOn()).map(day -> day.minusDays(1));
        Stream<LocalDate> test = Stream.ofNullable(facts.nextLateAfter()).filter(day -> !day.isBefore(today));
        return Stream.of(ends, opening, test)
                .flatMap(days -> days)
                .min(Comparator.naturalOrder())
                .orElse(null);
    }

    private LocalDate day(Instant at) {
        return LocalDate.ofInstant(at, facts.zone());
    }

    private static boolean after(@Nullable Instant one, Instant other) {
        return one != null && one.isAfter(other);
    }
}
