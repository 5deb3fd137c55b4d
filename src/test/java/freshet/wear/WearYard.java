package freshet.wear;

import freshet.TestClock;
import freshet.care.CareYard;
import freshet.findings.FindingDraft;
import freshet.findings.Findings;
import freshet.people.Person;
import freshet.pumps.Unit;
import freshet.readings.FlowTestDraft;
import freshet.readings.MeterKind;
import freshet.readings.ReadingDraft;
import freshet.readings.Readings;
import java.math.BigDecimal;
import java.time.Instant;
import org.springframework.stereotype.Component;

/** Writes the past of units for the tests of this room: meter readings, flow tests of a wanted fraction, findings at their time. */
@Component
class WearYard {

    /** Seconds to fill the drum at the first test of every unit. */
    static final double FIRST_SECONDS = 26;

    private final CareYard yard;
    private final Readings readings;
    private final Findings findings;
    private final TestClock clock;

    WearYard(CareYard yard, Readings readings, Findings findings, TestClock clock) {
        this.yard = yard;
        this.readings = readings;
        this.findings = findings;
        this.clock = clock;
    }

    Person ilse() {
        return yard.ilse();
    }

    static Instant noon(String day) {
        return Instant.parse(day + "T18:00:00Z");
    }

    void read(Unit unit, String day, double hours) {
        readings.recordReading(
                ReadingDraft.of(unit.id(), MeterKind.RUN_HOURS, noon(day), BigDecimal.valueOf(hours)), ilse());
    }

    /** Another meter in place of the present one. */
    void swap(Unit unit, String day, double last, double first) {
        readings.swapMeter(
                unit.id(),
                MeterKind.RUN_HOURS,
                noon(day),
                BigDecimal.valueOf(last),
                BigDecimal.valueOf(first),
                null,
                null,
                ilse());
    }

    /** A test at one head: the flow is inverse to the seconds, so the fraction of the first test is what is asked. */
    long test(Unit unit, Instant at, double fraction) {
        return readings.recordFlowTest(CareYard.flowTest(unit.id(), at, FIRST_SECONDS / fraction), ilse());
    }

    /** A test at another lift, on a rig of this name. */
    void testAtLift(Unit unit, Instant at, double liftM, double seconds, String rig) {
        FlowTestDraft usual = CareYard.flowTest(unit.id(), at, seconds);
        readings.recordFlowTest(
                new FlowTestDraft(
                        usual.unitId(),
                        usual.at(),
                        rig,
                        usual.container(),
                        usual.seconds(),
                        liftM,
                        null,
                        usual.heightUncertaintyM(),
                        usual.waterC(),
                        null,
                        usual.exitLoss(),
                        usual.pieces(),
                        null,
                        null,
                        null,
                        null),
                ilse());
    }

    /** A meter reading and a test at the same moment. */
    long readAndTest(Unit unit, String day, double hours, double fraction) {
        read(unit, day, hours);
        return test(unit, noon(day), fraction);
    }

    /** Writes a finding as of a moment, and puts the clock back. */
    long found(Unit unit, Instant at, int severity, String what) {
        Instant now = clock.instant();
        clock.set(at);
        long id = findings.write(FindingDraft.about(unit.id(), severity, what), ilse());
        clock.set(now);
        return id;
    }

    void closed(long finding, Instant at, String how) {
        Instant now = clock.instant();
        clock.set(at);
        findings.close(finding, findings.finding(finding).version(), how, ilse());
        clock.set(now);
    }
}
