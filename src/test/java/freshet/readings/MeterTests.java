package freshet.readings;

import static freshet.readings.MeterKind.RUN_HOURS;
import static freshet.readings.MeterKind.STARTS;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import freshet.FreshetTest;
import freshet.TestClock;
import freshet.measures.UnitSystem;
import freshet.people.People;
import freshet.people.Refused;
import freshet.people.Refused.Wrong;
import freshet.places.Places;
import freshet.pumps.Pumps;
import freshet.pumps.Ratings;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.context.event.ApplicationEvents;
import org.springframework.test.context.event.RecordApplicationEvents;

@FreshetTest
@RecordApplicationEvents
class MeterTests {

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
    ApplicationEvents events;

    Yard yard;
    long unit;

    @BeforeEach
    void openTheYard() {
        clock.set("2026-06-01T12:00:00Z");
        yard = new Yard(people, places, pumps, UnitSystem.US);
        unit = yard.unit("BF-19").id();
    }

    private static BigDecimal showing(String value) {
        return new BigDecimal(value);
    }

    private void read(Instant at, String value) {
        readings.recordReading(ReadingDraft.of(unit, RUN_HOURS, at, showing(value)), yard.me);
    }

    private void readRolledOver(Instant at, String value, String rollsOverAt) {
        readings.recordReading(
                new ReadingDraft(
                        unit,
                        RUN_HOURS,
                        at,
                        showing(value),
                        true,
                        rollsOverAt == null ? null : showing(rollsOverAt),
                        null),
                yard.me);
    }

    private void swap(Instant at, String last, String first) {
        readings.swapMeter(unit, RUN_HOURS, at, showing(last), showing(first), null, null, yard.me);
    }

    private static Instant later(double hours) {
        return NOON.plusMillis(Math.round(hours * 3_600_000));
    }

    private BigDecimal lifetime() {
        return readings.log(unit, RUN_HOURS).lifetime();
    }

    private static Wrong refusal(ThrowingCallable act) {
        Refused refused = catchThrowableOfType(Refused.class, act);
        assertThat(refused).as("was not refused").isNotNull();
        return refused.wrongs().get(0);
    }

    @Test
    void knowsAMeterFromItsFirstReading() {
        assertThat(lifetime()).isNull();
        read(NOON, "412.6");

        assertThat(lifetime()).isEqualByComparingTo("412.6");
        assertThat(readings.log(unit, RUN_HOURS).lines())
                .singleElement()
                .satisfies(line -> assertThat(line.what()).isEqualTo(MeterLog.What.READ));
        assertThat(events.stream(ReadingsRecorded.class)).containsExactly(new ReadingsRecorded(java.util.Set.of(unit)));
    }

    @Test
    void refusesAReadingBelowTheLast() {
        read(NOON, "412.6");
        Wrong wrong = refusal(() -> read(later(24), "410"));

        assertThat(wrong).isEqualTo(Wrong.at("value", "readings.value.below", "410", "412.6", "14 Mar 2026, 07:00"));
        assertThat(lifetime()).isEqualByComparingTo("412.6");
    }

    @Test
    void refusesMoreHoursThanTheClockAllows() {
        read(NOON, "100");
        assertThat(refusal(() -> read(later(10), "110.21")).code()).isEqualTo("readings.value.tooFast");
        read(later(10), "110.2");
        assertThat(lifetime()).isEqualByComparingTo("110.2");
    }

    @Test
    void letsTheLastWheelTurnBetweenTwoReadingsMinutesApart() {
        read(NOON, "100.0");
        read(later(0.05), "100.1");
        assertThat(refusal(() -> read(later(0.1), "100.3")).code()).isEqualTo("readings.value.tooFast");
    }

    @Test
    void refusesMoreThanAStartAMinute() {
        readings.recordReading(ReadingDraft.of(unit, STARTS, NOON, showing("0")), yard.me);
        assertThat(refusal(() ->
                                readings.recordReading(ReadingDraft.of(unit, STARTS, later(1), showing("61")), yard.me))
                        .code())
                .isEqualTo("readings.value.tooFast");
        readings.recordReading(ReadingDraft.of(unit, STARTS, later(1), showing("60")), yard.me);
        assertThat(refusal(() -> readings.recordReading(
                                ReadingDraft.of(unit, STARTS, later(2), showing("60.5")), yard.me))
                        .code())
                .isEqualTo("readings.value.decimals.STARTS");
    }

    @Test
    void refusesAReadingFromTheFutureButForgivesAClockThatIsAhead() {
        Instant now = clock.instant();
        assertThat(refusal(() -> read(now.plus(Duration.ofMinutes(6)), "1")))
                .isEqualTo(Wrong.at("at", "readings.at.future"));
        read(now.plus(Duration.ofMinutes(4)), "1");
    }

    @Test
    void refusesValuesThatNoMeterShows() {
        assertThat(refusal(() -> read(NOON, "-1")).code()).isEqualTo("readings.value.range");
        assertThat(refusal(() -> read(NOON, "10000000000")).code()).isEqualTo("readings.value.range");
        assertThat(refusal(() -> read(NOON, "1.234")).code()).isEqualTo("readings.value.decimals.RUN_HOURS");
        assertThat(readings.log(unit, RUN_HOURS).lines()).isEmpty();
    }

    @Test
    void takesTheSameReadingTwiceAsOne() {
        read(NOON, "412.6");
        read(NOON, "412.60");
        assertThat(readings.log(unit, RUN_HOURS).lines()).hasSize(1);
        assertThat(refusal(() -> read(NOON, "412.7"))).satisfies(wrong -> {
            assertThat(wrong.code()).isEqualTo("readings.value.readAlready");
            assertThat(wrong.arguments()).first().isEqualTo("412.6");
        });
        assertThat(events.stream(ReadingsRecorded.class)).hasSize(1);
    }

    @Test
    void fitsALateEntryBetweenTheReadingsAroundIt() {
        read(NOON, "100");
        read(later(100), "150");
        assertThat(refusal(() -> read(later(50), "151")).code()).isEqualTo("readings.value.above");
        assertThat(refusal(() -> read(later(98), "120")).code()).isEqualTo("readings.value.tooFastAfter");
        read(later(50), "120");
        // nobody saw this meter fitted, so an older page of the book fits before it
        read(later(-100), "80");

        assertThat(readings.log(unit, RUN_HOURS).lines())
                .extracting(line -> line.lifetime().intValue())
                .containsExactly(80, 100, 120, 150);
    }

    @Test
    void countsAllMetersTogetherAfterASwap() {
        read(NOON, "400");
        swap(later(48), "412.6", "0");
        swap(later(48), "412.6", "0");
        read(later(72), "7.5");

        MeterLog log = readings.log(unit, RUN_HOURS);
        assertThat(log.lifetime()).isEqualByComparingTo("420.1");
        assertThat(log.lines())
                .extracting(MeterLog.Line::what)
                .containsExactly(MeterLog.What.READ, MeterLog.What.REMOVED, MeterLog.What.FITTED, MeterLog.What.READ);
        assertThat(log.lifetimeAt(later(60))).isEqualTo(416.35);
        // and an entry from before the swap is held against the old meter
        assertThat(refusal(() -> read(later(24), "5")).code()).isEqualTo("readings.value.below");
        read(later(24), "405");
        assertThat(lifetime()).isEqualByComparingTo("420.1");
    }

    @Test
    void handsOutTheHoursOfManyUnitsAsOfEach() {
        long other = yard.unit("BF-08").id();
        long unread = yard.unit("BF-09").id();
        long startsOnly = yard.unit("BF-10").id();
        read(NOON, "400");
        swap(later(48), "412.6", "0");
        read(later(72), "7.5");
        readings.recordReading(ReadingDraft.of(other, RUN_HOURS, NOON, showing("12")), yard.me);
        readings.recordReading(ReadingDraft.of(startsOnly, STARTS, NOON, showing("12")), yard.me);

        var logs = readings.hourLogs(List.of(unit, other, unread, startsOnly));
        assertThat(logs).containsOnlyKeys(unit, other);
        assertThat(logs.get(unit).lines())
                .extracting(MeterLog.Line::what, MeterLog.Line::at, MeterLog.Line::lifetime)
                .containsExactlyElementsOf(readings.log(unit, RUN_HOURS).lines().stream()
                        .map(line -> org.assertj.core.groups.Tuple.tuple(line.what(), line.at(), line.lifetime()))
                        .toList());
        assertThat(logs.get(unit).lifetimeAt(later(60))).isEqualTo(416.35);
        assertThat(logs.get(other).lifetime()).isEqualByComparingTo("12");
    }

    @Test
    void addsOnlyTheRiseOfAUsedMeterFittedInASwap() {
        read(NOON, "400");
        swap(later(1), "400", "5000");
        read(later(11), "5010");
        assertThat(lifetime()).isEqualByComparingTo("410");
    }

    @Test
    void refusesASwapThatCannotBe() {
        assertThat(refusal(() -> swap(NOON, "1", "0")).code()).isEqualTo("readings.meter.none");
        read(NOON, "400");
        assertThat(refusal(() -> swap(later(1), "399", "0")))
                .satisfies(wrong -> assertThat(wrong.field()).isEqualTo("lastValue"));
        assertThat(refusal(() -> swap(later(1), "402", "0")).code()).isEqualTo("readings.value.tooFast");
        assertThat(refusal(() -> swap(later(-1), "400", "0")).code()).isEqualTo("readings.swap.readLater");
        assertThat(refusal(() -> readings.fitMeter(unit, RUN_HOURS, later(1), BigDecimal.ZERO, null, null, yard.me))
                        .code())
                .isEqualTo("readings.meter.there");
    }

    @Test
    void startsAFittedMeterAtItsFirstValue() {
        readings.fitMeter(unit, RUN_HOURS, NOON, showing("3"), showing("9999.9"), "new in its box", yard.me);
        assertThat(refusal(() -> read(later(-1), "2")).code()).isEqualTo("readings.at.noMeter");
        assertThat(refusal(() -> read(later(1), "10000")).code()).isEqualTo("readings.value.beyondRollover");
        read(later(1), "4");
        assertThat(lifetime()).isEqualByComparingTo("4");
    }

    @Test
    void carriesTheLifetimeOverARollover() {
        read(NOON, "99990");
        assertThat(refusal(() -> readRolledOver(later(24), "5", null)).code())
                .isEqualTo("readings.rollsOverAt.unknown");
        assertThat(refusal(() -> readRolledOver(later(24), "99995", "99999.9")).code())
                .isEqualTo("readings.rolledOver.notLower");
        readRolledOver(later(24), "5", "99999.9");

        assertThat(lifetime()).isEqualByComparingTo("100004.9");
        assertThat(readings.log(unit, RUN_HOURS).rollsOverAt()).isEqualByComparingTo("99999.9");
        // late entries on both sides of the moment when it turned over
        read(later(6), "99995");
        readRolledOver(later(20), "3", null);
        assertThat(lifetime()).isEqualByComparingTo("100004.9");
        assertThat(refusal(() -> readRolledOver(later(30), "4", "9999.9")).code())
                .isEqualTo("readings.rollsOverAt.other");
    }

    @Test
    void takesAWrongReadingBackAndKeepsItToBeRead() {
        read(NOON, "412.6");
        read(later(1000), "1126");
        assertThat(refusal(() -> read(later(1024), "512")).code()).isEqualTo("readings.value.below");
        long wrongOne = readings.log(unit, RUN_HOURS).last().readingId();
        assertThat(refusal(() -> readings.withdrawReading(unit, wrongOne, " ", yard.me))
                        .code())
                .isEqualTo("readings.why.missing");
        readings.withdrawReading(unit, wrongOne, "one digit too many", yard.me);
        read(later(1024), "512");

        assertThat(lifetime()).isEqualByComparingTo("512");
        assertThat(readings.log(unit, RUN_HOURS).lines()).anySatisfy(line -> {
            assertThat(line.what()).isEqualTo(MeterLog.What.WITHDRAWN);
            assertThat(line.note()).isEqualTo("one digit too many");
        });
    }

    @Test
    void beginsAnewWhenTheVeryFirstReadingWasWrong() {
        read(NOON, "4126");
        readings.withdrawReading(unit, readings.log(unit, RUN_HOURS).last().readingId(), "no point", yard.me);
        assertThat(lifetime()).isNull();
        read(NOON, "412.6");
        assertThat(lifetime()).isEqualByComparingTo("412.6");
    }

    @Test
    void doesNotTakeBackTheRolloverThatOthersRestOn() {
        read(NOON, "99990");
        readRolledOver(later(24), "5", "99999.9");
        read(later(48), "20");
        long rollover = readings.log(unit, RUN_HOURS).lines().get(1).readingId();
        assertThat(refusal(() -> readings.withdrawReading(unit, rollover, "hm", yard.me))
                        .code())
                .isEqualTo("readings.withdraw.carries");
    }

    @Test
    void letsOnlyOneOfTwoReadingsInThatCannotBothBe() throws Exception {
        for (int round = 0; round < 8; round++) {
            unit = yard.unit("TWO-" + round).id();
            if (round % 2 == 0) {
                read(later(-100), "0");
            }
            List<Boolean> kept = together(() -> read(NOON, "20"), () -> read(later(1), "15"));
            assertThat(kept).containsExactlyInAnyOrder(true, false);
            assertThat(readings.log(unit, RUN_HOURS).lines()).hasSize(round % 2 == 0 ? 2 : 1);
        }
    }

    @Test
    void keepsADoublePressOnce() throws Exception {
        for (int round = 0; round < 8; round++) {
            unit = yard.unit("DBL-" + round).id();
            assertThat(together(() -> read(NOON, "20"), () -> read(NOON, "20"))).containsExactly(true, true);
            assertThat(readings.log(unit, RUN_HOURS).lines()).hasSize(1);
        }
    }

    private static List<Boolean> together(Runnable one, Runnable other) throws Exception {
        ExecutorService two = Executors.newFixedThreadPool(2);
        try {
            CountDownLatch start = new CountDownLatch(1);
            Future<Boolean> first = two.submit(tried(start, one));
            Future<Boolean> second = two.submit(tried(start, other));
            start.countDown();
            return List.of(first.get(), second.get());
        } finally {
            two.shutdownNow();
        }
    }

    private static Callable<Boolean> tried(CountDownLatch start, Runnable act) {
        return () -> {
            start.await();
            try {
                act.run();
                return true;
            } catch (Refused refused) {
                return false;
            }
        };
    }

    @Test
    void saysHowHardAUnitIsWorkedBesideItsModelsLimits() {
        Ratings limits = new Ratings(null, null, null, null, null, null, 10.0, 1.0, null, null, null, null);
        unit = yard.unit("QM-101", yard.model("Sump", 0.05, limits, Yard.FT_02)).id();
        assertThat(readings.dutyCycle(unit)).isEmpty();
        starts(NOON, "1000");
        read(NOON.plusSeconds(60), "50");
        assertThat(readings.dutyCycle(unit)).isEmpty();
        starts(later(10), "1050");
        read(later(10), "55");
        starts(later(11), "1062");
        read(later(20), "56");
        starts(later(20), "1122");

        DutyCycle cycle = readings.dutyCycle(unit).orElseThrow();
        assertThat(cycle.whole().starts()).isEqualByComparingTo("122");
        assertThat(cycle.whole().startsPerHour()).isEqualTo(6.1);
        assertThat(cycle.whole().minutesPerStart()).isEqualTo(60 * 6 / 122.0);
        // 12 starts in the eleventh hour
        assertThat(cycle.busiest().startsPerHour()).isEqualTo(12);
        assertThat(cycle.tooManyStarts()).isTrue();
        // one hour in 72 starts: 50 s each
        assertThat(cycle.shortestRuns().minutesPerStart()).isEqualTo(60 / 72.0);
        assertThat(cycle.runsTooShort()).isTrue();
    }

    private void starts(Instant at, String value) {
        readings.recordReading(ReadingDraft.of(unit, STARTS, at, showing(value)), yard.me);
    }

    @Test
    void answersNothingForAUnitThatIsNotThere() {
        assertThatCode(() -> readings.recordReading(ReadingDraft.of(999_999, RUN_HOURS, NOON, showing("1")), yard.me))
                .isInstanceOf(Refused.class);
    }
}
