package freshet.example;

import freshet.people.Person;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import freshet.readings.FlowTestDraft;
import freshet.readings.MeterKind;
import freshet.readings.ReadingDraft;
import freshet.readings.Readings;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;

/** The flow tests of the example yard: a healthy pump, a worn one, two people who disagree, and a pump that wears by the hour. */
final class PastTests {

    private static final double FT = 0.3048;
    private static final double IN_MM = 25.4;
    private static final double GPM_L_PER_S = 3.785411784 / 60;
    private static final double DRUM_L = 20 * 3.785411784;
    private static final double TANK_L = 275 * 3.785411784;

    private final Pumps pumps;
    private final Readings readings;
    private final Instant now;

    PastTests(Pumps pumps, Readings readings, Clock clock) {
        this.pumps = pumps;
        this.readings = readings;
        this.now = clock.instant().truncatedTo(ChronoUnit.MINUTES);
    }

    void makeThem(Map<String, Person> crew) {
        Person ilse = crew.get("ilse");
        Person teo = crew.get("teo");
        Person freya = crew.get("freya");
        drum("BF-01", 830, 36.4, teo);
        drum("BF-01", 41, 35.9, teo);
        drum("BF-02", 640, 36.1, teo);
        drum("BF-02", 39, 34.6, ilse);
        drum("BF-07", 940, 36.6, ilse);
        drum("BF-07", 380, 33.4, teo);
        drum("BF-07", 260, 31.4, ilse);
        drum("BF-07", 12, 30.9, teo);
        drum("BF-09", 700, 36.0, ilse);
        drum("BF-09", 9, 34.1, ilse);
        onRig("BF-09", 9, 2, "R-2", 30.8, 1.25, teo);
        drum("OS-L1", 400, 36.3, freya);
        drum("OS-L1", 33, 35.8, freya);
        double[] wearing = {160, 157.5, 153, 149.5, 146, 141};
        double[] hours = {268.4, 309.7, 355.2, 401.8, 447.5, 516.3};
        for (int i = 0; i < wearing.length; i++) {
            tank("BF-18", 330 - 62L * i, wearing[i], hours[i], ilse);
        }
        tank("BF-17", 300, 161, 201.2, teo);
        tank("BF-17", 20, 158, 262.9, teo);
    }

    /** The yard's drum on rig R-1: 10 ft of 1 1/2 in hose, 8 ft of lift. */
    private void drum(String tag, long daysAgo, double gpm, Person by) {
        onRig(tag, daysAgo, 0, "R-1", gpm, 1.5, by);
    }

    private void onRig(String tag, long daysAgo, int hoursLater, String rig, double gpm, double boreIn, Person by) {
        record(tag, daysAgo, hoursLater, rig, DRUM_L, gpm, 8, boreIn, 10, by);
    }

    /** The measured tank: 20 ft of 2 in hose, 20 ft of lift; the meter is read too. */
    private void tank(String tag, long daysAgo, double gpm, double runHours, Person by) {
        record(tag, daysAgo, 0, "R-3", TANK_L, gpm, 20, 2, 20, by);
        readings.recordReading(
                ReadingDraft.of(
                        pumps.unitTagged(tag).orElseThrow().id(),
                        MeterKind.RUN_HOURS,
                        now.minus(Duration.ofDays(daysAgo)).minus(Duration.ofHours(3)),
                        BigDecimal.valueOf(runHours)),
                by);
    }

    private void record(
            String tag,
            long daysAgo,
            int hoursLater,
            String rig,
            double containerL,
            double gpm,
            double liftFt,
            double boreIn,
            double lengthFt,
            Person by) {
        Unit unit = pumps.unitTagged(tag).orElseThrow();
        double seconds = Math.round(10 * containerL / (gpm * GPM_L_PER_S)) / 10.0;
        readings.recordFlowTest(
                new FlowTestDraft(
                        unit.id(),
                        now.minus(Duration.ofDays(daysAgo)).minus(Duration.ofHours(4 - hoursLater)),
                        rig,
                        new FlowTestDraft.Container(
                                containerL,
                                containerL * FlowTestDraft.USUAL_CONTAINER_UNCERTAINTY,
                                FlowTestDraft.USUAL_TIMING_UNCERTAINTY_S,
                                null),
                        List.of(seconds - 0.2, seconds + 0.3, seconds - 0.1),
                        liftFt * FT,
                        null,
                        FlowTestDraft.USUAL_HEIGHT_UNCERTAINTY_M,
                        10,
                        unit.model().ratings().outletMm(),
                        1,
                        List.of(new FlowTestDraft.Piece("SMOOTH_HOSE", boreIn * IN_MM, lengthFt * FT, 0.0015, null, 0)),
                        null,
                        null,
                        null,
                        null),
                by);
    }
}
