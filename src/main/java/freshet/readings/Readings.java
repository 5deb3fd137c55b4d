package freshet.readings;

import freshet.people.Person;
import freshet.people.Refused;
import freshet.pumps.Unit;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.interceptor.TransactionAspectSupport;

/** The door to what was read and measured on the pumps: meters, flow tests, and what follows from them. */
@Service
@Transactional
public class Readings {

    private final Meters meters;
    private final FlowTests flowTests;
    private final ApplicationEventPublisher events;

    Readings(Meters meters, FlowTests flowTests, ApplicationEventPublisher events) {
        this.meters = meters;
        this.flowTests = flowTests;
        this.events = events;
    }

    /**
     * Writes one reading down; the same reading sent again changes nothing. A unit whose meter nobody has seen yet gets one.
     *
     * @throws Refused when it cannot be: below the last, more than the time allows, in the future, or unlike a reading found there
     */
    public void recordReading(ReadingDraft draft, Person by) {
        ReadingsTaken taken = meters.take(List.of(draft), by);
        if (!taken.refused().isEmpty()) {
            throw new Refused(
                    taken.refused().stream().map(ReadingsTaken.Row::wrong).toList());
        }
        if (taken.added() > 0) {
            events.publishEvent(new ReadingsRecorded(Set.of(draft.unitId())));
        }
    }

    /** Takes in many readings, in any order: all of them, or none when one is refused. */
    public ReadingsTaken recordReadings(List<ReadingDraft> drafts, Person by) {
        ReadingsTaken taken = meters.take(drafts, by);
        if (!taken.refused().isEmpty()) {
            leaveNoTrace();
        } else if (taken.added() > 0) {
            events.publishEvent(new ReadingsRecorded(
                    drafts.stream().map(ReadingDraft::unitId).collect(Collectors.toSet())));
        }
        return taken;
    }

    /** What {@link #recordReadings} would do, without doing it. */
    public ReadingsTaken tryReadings(List<ReadingDraft> drafts, Person by) {
        leaveNoTrace();
        return meters.take(drafts, by);
    }

    private static void leaveNoTrace() {
        TransactionAspectSupport.currentTransactionStatus().setRollbackOnly();
    }

    /** Puts the first meter on a unit that has none. */
    public void fitMeter(
            long unitId,
            MeterKind kind,
            Instant at,
            BigDecimal firstValue,
            @Nullable BigDecimal rollsOverAt,
            @Nullable String note,
            Person by) {
        meters.fit(unitId, kind, at.truncatedTo(ChronoUnit.MICROS), firstValue, rollsOverAt, note, by);
        events.publishEvent(new ReadingsRecorded(Set.of(unitId)));
    }

    /** Puts another meter in the place of the present one; the same swap sent again changes nothing. */
    public void swapMeter(
            long unitId,
            MeterKind kind,
            Instant at,
            BigDecimal lastValueOld,
            BigDecimal firstValueNew,
            @Nullable BigDecimal rollsOverAt,
            @Nullable String note,
            Person by) {
        Instant when = at.truncatedTo(ChronoUnit.MICROS);
        meters.swap(unitId, kind, when, lastValueOld, firstValueNew, rollsOverAt, note, by);
        events.publishEvent(new ReadingsRecorded(Set.of(unitId)));
    }

    /** Takes a wrong reading back; it stays to be read, with the reason, and no longer counts. */
    public void withdrawReading(long unitId, long readingId, String why, Person by) {
        meters.withdraw(unitId, readingId, why, by);
        events.publishEvent(new ReadingsRecorded(Set.of(unitId)));
    }

    @Transactional(readOnly = true)
    public MeterLog log(long unitId, MeterKind kind) {
        return meters.log(unitId, kind);
    }

    /** The logs of the run hours of these units, without what was withdrawn; units whose hours were never read are not in it. */
    @Transactional(readOnly = true)
    public Map<Long, MeterLog> hourLogs(Collection<Long> unitIds) {
        return meters.logs(MeterKind.RUN_HOURS, unitIds).stream()
                .collect(Collectors.toMap(MeterLog::unitId, log -> log));
    }

    /** The logs of the meters of one kind of these units, without what was withdrawn; units that were never read are not among them. */
    @Transactional(readOnly = true)
    public List<MeterLog> logs(MeterKind kind, Collection<Long> unitIds) {
        return meters.logs(kind, unitIds);
    }

    /** All that was written down about the meters of these units and still stands, by unit and kind, oldest first. */
    @Transactional(readOnly = true)
    public List<MeterFact> meterFacts(Collection<Long> unitIds) {
        return meters.facts(unitIds);
    }

    /** How the unit has been worked; empty until its starts were read twice, an hour apart or more. */
    @Transactional(readOnly = true)
    public Optional<DutyCycle> dutyCycle(long unitId) {
        return meters.dutyCycle(unitId);
    }

    /**
     * What a flow test says, without keeping it.
     *
     * @throws Refused when it cannot be, saying at which field of the page and why
     */
    @Transactional(readOnly = true)
    public FlowTestResult workOut(FlowTestDraft draft, Person by) {
        return flowTests.workOut(draft, by);
    }

    /** Keeps a flow test and answers its id; the same test sent again is kept once. Refused as {@link #workOut}. */
    public long recordFlowTest(FlowTestDraft draft, Person by) {
        long id = flowTests.record(draft, by);
        events.publishEvent(new FlowTestRecorded(draft.unitId(), id));
        return id;
    }

    /** Takes a wrong test back; it stays to be read, with the reason, and no longer counts. */
    public void withdrawFlowTest(long id, String why, Person by) {
        flowTests.withdraw(id, why, by).ifPresent(test -> events.publishEvent(new FlowTestWithdrawn(test.unitId, id)));
    }

    @Transactional(readOnly = true)
    public FlowTestResult flowTest(long id) {
        return flowTests.result(id);
    }

    /** All tests of a unit, newest first; those that were withdrawn are among them and say so. */
    @Transactional(readOnly = true)
    public List<FlowTestResult> flowTests(long unitId) {
        return flowTests.results(unitId);
    }

    /** The standing tests of a unit as they are drawn on its curve sheet, with the line it runs on now. */
    @Transactional(readOnly = true)
    public TestPlot plot(long unitId) {
        return flowTests.plot(unitId);
    }

    /** The lines that these units run on now, by unit; one that was never tested, or whose tests do not fit its model, is not in it. */
    @Transactional(readOnly = true)
    public Map<Long, TestPlot.OwnLine> lines(Collection<Unit> units) {
        return flowTests.lines(units);
    }

    /** What the unit still gives by its latest test; empty when it was never tested, or its model's curve no longer holds the test. */
    @Transactional(readOnly = true)
    public Optional<Capacity> capacity(long unitId) {
        return Optional.ofNullable(capacities(Set.of(unitId)).get(unitId));
    }

    /** The same for many units at once; units of which nothing can be said are not in it. */
    @Transactional(readOnly = true)
    public Map<Long, Capacity> capacities(Collection<Long> unitIds) {
        return flowTests.capacities(unitIds);
    }

    /** What each standing test of these units said, as {@link #capacity} does of the latest, oldest first; those that say nothing are left out. */
    @Transactional(readOnly = true)
    public Map<Long, List<Capacity>> capacityHistories(Collection<Long> unitIds) {
        return flowTests.capacityHistories(unitIds);
    }

    /** The standing tests of each of these units held against the unit's first, oldest first; untested units are not in it. */
    @Transactional(readOnly = true)
    public Map<Long, List<ComparedTest>> comparedTests(Collection<Long> unitIds) {
        return flowTests.compared(unitIds);
    }
}
