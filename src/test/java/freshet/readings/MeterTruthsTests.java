package freshet.readings;

import static freshet.readings.MeterKind.RUN_HOURS;
import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.TestClock;
import freshet.measures.UnitSystem;
import freshet.people.People;
import freshet.people.Refused;
import freshet.places.Places;
import freshet.pumps.Pumps;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;

/** Random lives of a pump, held against what it really ran: an oracle that knows nothing of the room. */
@FreshetTest
class MeterTruthsTests {

    private static final BigDecimal TURNS_OVER = new BigDecimal("1000");

    @Autowired
    Readings readings;

    @Autowired
    People people;

    @Autowired
    Places places;

    @Autowired
    Pumps pumps;

    @Autowired
    TestClock clock;

    Yard yard;
    long unit;

    @BeforeEach
    void openTheYard() {
        clock.set("2026-06-01T12:00:00Z");
        yard = new Yard(people, places, pumps, UnitSystem.US);
        unit = yard.unit("BF-19").id();
    }

    /** What the pump did: it ran so long by then. */
    private record Truth(Instant at, BigDecimal ran) {}

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
    void holdsTheTruthThroughReadingsSwapsAndRollovers(long seed) {
        Random chance = new Random(seed);
        Instant now = Instant.parse("2020-01-01T00:00:00Z");
        BigDecimal ran = tenths(chance, 5000);
        BigDecimal shows = ran.remainder(TURNS_OVER);
        BigDecimal firstSeen = shows;
        BigDecimal atStart = ran;
        readings.fitMeter(unit, RUN_HOURS, now, shows, TURNS_OVER, null, yard.me);
        List<Truth> truths = new ArrayList<>(List.of(new Truth(now, ran)));

        for (int step = 0; step < 40; step++) {
            int hours = 1 + chance.nextInt(900);
            BigDecimal rise = tenths(chance, 10 * hours + 1);
            now = now.plus(Duration.ofHours(hours));
            ran = ran.add(rise);
            boolean turned = shows.add(rise).compareTo(TURNS_OVER) >= 0;
            shows = shows.add(rise).remainder(TURNS_OVER);
            refuseNonsense(chance, now, turned ? null : shows.subtract(rise));
            if (!turned && chance.nextInt(5) == 0) {
                BigDecimal next = tenths(chance, 5000);
                readings.swapMeter(unit, RUN_HOURS, now, shows, next, TURNS_OVER, null, yard.me);
                shows = next;
            } else {
                readings.recordReading(new ReadingDraft(unit, RUN_HOURS, now, shows, turned, null, null), yard.me);
            }
            truths.add(new Truth(now, ran));
        }

        MeterLog log = readings.log(unit, RUN_HOURS);
        BigDecimal before = BigDecimal.ZERO;
        for (MeterLog.Line line : log.lines()) {
            assertThat(line.lifetime()).as("lifetime never falls").isGreaterThanOrEqualTo(before);
            before = line.lifetime();
        }
        for (Truth truth : truths) {
            BigDecimal known = truth.ran().subtract(atStart).add(firstSeen);
            assertThat(BigDecimal.valueOf(log.lifetimeAt(truth.at())))
                    .as("lifetime at %s", truth.at())
                    .isEqualByComparingTo(known);
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {21, 22, 23, 24, 25, 26})
    void comesToTheSameInWhateverOrderTheBookIsCopied(long seed) {
        Random chance = new Random(seed);
        Instant now = Instant.parse("2020-01-01T00:00:00Z");
        BigDecimal ran = tenths(chance, 5000);
        List<ReadingDraft> book = new ArrayList<>();
        for (int line = 0; line < 60; line++) {
            book.add(ReadingDraft.of(unit, RUN_HOURS, now, ran));
            int hours = 1 + chance.nextInt(400);
            now = now.plus(Duration.ofHours(hours));
            ran = ran.add(tenths(chance, 10 * hours + 1));
        }
        BigDecimal last = book.get(book.size() - 1).value();
        Collections.shuffle(book, chance);
        for (ReadingDraft entry : book.subList(0, 20)) {
            readings.recordReading(entry, yard.me);
        }
        ReadingsTaken taken = readings.recordReadings(book, yard.me);

        assertThat(taken).isEqualTo(new ReadingsTaken(40, 20, List.of()));
        MeterLog log = readings.log(unit, RUN_HOURS);
        assertThat(log.lifetime()).isEqualByComparingTo(last);
        assertThat(log.lines())
                .hasSize(60)
                .isSortedAccordingTo(java.util.Comparator.comparing(MeterLog.Line::lifetime));
    }

    /** A value that fell, or rose more than the clock: refused, and nothing of it stays. */
    private void refuseNonsense(Random chance, Instant now, BigDecimal shown) {
        if (shown == null || shown.signum() == 0) {
            return;
        }
        MeterLog before = readings.log(unit, RUN_HOURS);
        BigDecimal nonsense = chance.nextBoolean()
                ? shown.subtract(new BigDecimal("0.1"))
                : shown.add(BigDecimal.valueOf(
                        Duration.between(before.last().at(), now).toHours() * 103 / 100 + 1));
        try {
            readings.recordReading(ReadingDraft.of(unit, RUN_HOURS, now, nonsense), yard.me);
            throw new AssertionError(nonsense + " was taken after " + shown);
        } catch (Refused refused) {
            assertThat(readings.log(unit, RUN_HOURS)).isEqualTo(before);
        }
    }

    private static BigDecimal tenths(Random chance, int below) {
        return BigDecimal.valueOf(chance.nextInt(below), 1);
    }
}
