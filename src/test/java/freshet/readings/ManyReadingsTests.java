package freshet.readings;

import static freshet.readings.MeterKind.RUN_HOURS;
import static freshet.readings.MeterKind.STARTS;
import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.TestClock;
import freshet.measures.UnitSystem;
import freshet.people.People;
import freshet.places.Places;
import freshet.pumps.Pumps;
import freshet.pumps.Ratings;
import freshet.pumps.UnitArrival;
import freshet.pumps.UnitDraft;
import freshet.pumps.Whereabouts;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.event.ApplicationEvents;
import org.springframework.test.context.event.RecordApplicationEvents;

@FreshetTest
@RecordApplicationEvents
class ManyReadingsTests {

    private static final Instant NOON = Instant.parse("2026-03-14T12:00:00Z");

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

    @Autowired
    JdbcClient database;

    @Autowired
    ApplicationEvents events;

    Yard yard;

    @BeforeEach
    void openTheYard() {
        clock.set("2026-06-01T12:00:00Z");
        yard = new Yard(people, places, pumps, UnitSystem.US);
    }

    private static ReadingDraft read(long unit, long day, String value) {
        return ReadingDraft.of(unit, RUN_HOURS, NOON.plus(Duration.ofDays(day)), new BigDecimal(value));
    }

    private int kept() {
        return database.sql("select count(*) from meter_reading")
                .query(Integer.class)
                .single();
    }

    @Test
    void keepsNothingWhenOneRowIsWrongAndSaysWhichAndWhy() {
        long one = yard.unit("BF-01").id();
        long two = yard.unit("BF-02").id();
        List<ReadingDraft> rows = List.of(
                read(one, 0, "10"),
                read(one, 2, "5"),
                read(two, 0, "1"),
                read(two, 1, "99"),
                read(999_999, 0, "1"),
                read(two, 300, "2"),
                read(one, 3, "12"));
        ReadingsTaken taken = readings.recordReadings(rows, yard.me);

        assertThat(taken.added()).isZero();
        assertThat(taken.refused())
                .extracting(row -> row.index() + " " + row.wrong().code())
                .containsExactly(
                        "1 readings.value.below",
                        "3 readings.value.tooFast",
                        "4 readings.unit.unknown",
                        "5 readings.at.future");
        assertThat(kept()).isZero();
        assertThat(database.sql("select count(*) from meter")
                        .query(Integer.class)
                        .single())
                .isZero();
        assertThat(events.stream(ReadingsRecorded.class)).isEmpty();
    }

    @Test
    void triesRowsWithoutKeepingThem() {
        long one = yard.unit("BF-01").id();
        List<ReadingDraft> rows = List.of(read(one, 1, "12"), read(one, 0, "10"));
        assertThat(readings.tryReadings(rows, yard.me)).isEqualTo(new ReadingsTaken(2, 0, List.of()));
        assertThat(kept()).isZero();
        assertThat(readings.recordReadings(rows, yard.me)).isEqualTo(new ReadingsTaken(2, 0, List.of()));
        assertThat(readings.recordReadings(rows, yard.me)).isEqualTo(new ReadingsTaken(0, 2, List.of()));
        assertThat(events.stream(ReadingsRecorded.class)).hasSize(1);
    }

    @Test
    void takesTenThousandRowsOfAThousandUnitsAtOnce() {
        long model = pumps.addModel(yard.model("Plain", 0.05, Ratings.NONE, Yard.FT_02), yard.me)
                .id();
        List<UnitArrival> arrivals = new ArrayList<>();
        for (int i = 0; i < 1000; i++) {
            arrivals.add(new UnitArrival(
                    new UnitDraft("N-" + i, null, model, null, LocalDate.of(2025, 1, 1), null),
                    Whereabouts.at(yard.siteId)));
        }
        pumps.takeInUnits(arrivals, yard.me);
        List<ReadingDraft> rows = new ArrayList<>();
        for (long unit : pumps.activeUnitIds()) {
            for (int day = 0; day < 5; day++) {
                rows.add(read(unit, day, String.valueOf(100 + 3 * day)));
                rows.add(ReadingDraft.of(
                        unit, STARTS, NOON.plus(Duration.ofDays(day)), BigDecimal.valueOf(1000 + 40L * day)));
            }
        }
        Collections.shuffle(rows, new Random(7));
        ReadingsTaken taken = readings.recordReadings(rows, yard.me);
        assertThat(taken).isEqualTo(new ReadingsTaken(10_000, 0, List.of()));
        assertThat(kept()).isEqualTo(10_000);
        long any = pumps.unitTagged("N-500").orElseThrow().id();
        assertThat(readings.log(any, RUN_HOURS).lifetime()).isEqualByComparingTo("112");
        assertThat(readings.dutyCycle(any).orElseThrow().whole().minutesPerStart())
                .isEqualTo(4.5);
    }
}
