package freshet.reliability;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.time.Month;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class UsageRateTests {

    private static final LocalDate FIRST = LocalDate.of(2024, 1, 1);

    private static UsageRate.MeterReading reading(String date, double hours) {
        return new UsageRate.MeterReading(LocalDate.parse(date), hours);
    }

    private static boolean inSeason(LocalDate day) {
        return day.getMonthValue() >= 4 && day.getMonthValue() <= 9;
    }

    private static UsageRate<String> steady(List<UsageRate.MeterReading> readings) {
        return UsageRate.of(readings, day -> "always");
    }

    /** Readings every so many days of a unit that runs 6 h a day in season and 0.5 h out of it. */
    private static List<UsageRate.MeterReading> seasonal(int everyDays, int readings) {
        List<UsageRate.MeterReading> all = new ArrayList<>();
        double hours = 100;
        for (int i = 0; i < everyDays * readings; i++) {
            LocalDate day = FIRST.plusDays(i);
            hours += i == 0 ? 0 : inSeason(day) ? 6 : 0.5;
            if (i % everyDays == 0) {
                all.add(new UsageRate.MeterReading(day, hours));
            }
        }
        return all;
    }

    @Test
    void knowsNothingFromOneReading() {
        UsageRate<String> rate = steady(List.of(reading("2026-03-01", 500)));
        assertThat(rate.runHoursPerDay()).isNull();
        assertThat(rate.periods()).isEmpty();
        assertThat(rate.reaching(600, 0.95)).isEqualTo(new UsageRate.Arrival<>(null, null, null, List.<String>of()));
    }

    @Test
    void twoReadingsGiveADateWithoutAnInterval() {
        UsageRate<String> rate = steady(List.of(reading("2026-03-01", 500), reading("2026-03-11", 530)));
        assertThat(rate.runHoursPerDay()).isCloseTo(3, within(1e-12));
        UsageRate.Arrival<String> arrival = rate.reaching(560, 0.95);
        assertThat(arrival.expected()).isEqualTo("2026-03-21");
        assertThat(arrival.earliest()).isNull();
        assertThat(arrival.latest()).isNull();
    }

    @ParameterizedTest
    @ValueSource(ints = {7, 10, 25, 45})
    void separatesTheSeasonEvenWhenReadingsStraddleIt(int everyDays) {
        UsageRate<Boolean> rate = UsageRate.of(seasonal(everyDays, 800 / everyDays), UsageRateTests::inSeason);
        assertThat(rate.periods()).hasSize(2);
        assertThat(rate.periods().get(0).runHoursPerDay()).isCloseTo(0.5, within(1e-6));
        assertThat(rate.periods().get(1).runHoursPerDay()).isCloseTo(6, within(1e-6));
    }

    @Test
    void walksThroughTheSeasonsToTheDate() {
        List<UsageRate.MeterReading> readings = seasonal(10, 74);
        UsageRate.MeterReading last = readings.get(readings.size() - 1);
        assertThat(last.date()).isEqualTo("2025-12-31");
        // 90 days at 0.5 h to the end of March, then 6 h a day
        UsageRate.Arrival<Boolean> arrival =
                UsageRate.of(readings, UsageRateTests::inSeason).reaching(last.runHours() + 45 + 59, 0.95);
        assertThat(arrival.expected()).isEqualTo("2026-04-10");
        assertThat(arrival.earliest()).isBetween("2026-04-09", "2026-04-10");
        assertThat(arrival.latest()).isBetween("2026-04-10", "2026-04-11");
        assertThat(arrival.assumed()).isEmpty();
    }

    @Test
    void saysWhichMonthsItHadToAssume() {
        UsageRate<Month> rate = UsageRate.of(
                List.of(reading("2026-02-28", 0), reading("2026-03-31", 62), reading("2026-04-30", 122)),
                LocalDate::getMonth);
        assertThat(rate.periods()).extracting(UsageRate.PeriodUse::period).containsExactly(Month.MARCH, Month.APRIL);
        UsageRate.Arrival<Month> arrival = rate.reaching(122 + 90, 0.95);
        assertThat(arrival.expected()).isEqualTo("2026-06-14");
        assertThat(arrival.assumed()).containsExactly(Month.MAY, Month.JUNE);
    }

    @Test
    void datesHoursAlreadyReachedBetweenTheirReadings() {
        UsageRate<String> rate =
                steady(List.of(reading("2026-03-01", 500), reading("2026-03-11", 530), reading("2026-03-20", 560)));
        assertThat(rate.reaching(520, 0.95))
                .isEqualTo(new UsageRate.Arrival<>(
                        LocalDate.parse("2026-03-11"),
                        LocalDate.parse("2026-03-01"),
                        LocalDate.parse("2026-03-11"),
                        List.<String>of()));
    }

    @Test
    void aUnitThatStandsNeverArrives() {
        UsageRate<String> rate = steady(List.of(reading("2026-03-01", 500), reading("2026-06-01", 500)));
        assertThat(rate.runHoursPerDay()).isZero();
        assertThat(rate.reaching(501, 0.95).expected()).isNull();
    }

    @Test
    void theLastReadingOfADayCounts() {
        UsageRate<String> rate =
                steady(List.of(reading("2026-03-01", 500), reading("2026-03-01", 504), reading("2026-03-11", 524)));
        assertThat(rate.runHoursPerDay()).isCloseTo(2, within(1e-12));
    }

    @Test
    void datesHoldTheTruthAboutAsOftenAsTheySay() {
        Random random = new Random(42);
        int held = 0;
        int trials = 1000;
        for (int trial = 0; trial < trials; trial++) {
            List<UsageRate.MeterReading> readings = new ArrayList<>();
            double hours = 0;
            LocalDate reached = null;
            for (int day = 0; day <= 400; day++) {
                hours += day == 0 || random.nextInt(4) > 0 ? 0 : 8 * random.nextDouble();
                if (day <= 120 && day % 10 == 0) {
                    readings.add(new UsageRate.MeterReading(FIRST.plusDays(day), hours));
                }
                reached = reached == null && hours >= 200 ? FIRST.plusDays(day) : reached;
            }
            UsageRate.Arrival<String> arrival = steady(readings).reaching(200, 0.95);
            held += arrival.latest() != null
                            && !reached.isBefore(arrival.earliest())
                            && !reached.isAfter(arrival.latest())
                    ? 1
                    : 0;
        }
        assertThat((double) held / trials).isBetween(0.92, 0.98);
    }

    @ParameterizedTest
    @CsvSource({
        "2026-03-11, 499, readings[1].runHours, '499 h is outside 500 h of 2026-03-01 to 764 h, all hours since'",
        "2026-03-11, 765, readings[1].runHours, '765 h is outside 500 h of 2026-03-01 to 764 h, all hours since'",
        "2026-02-11, 510, readings[1].date, '2026-02-11 is before the reading of 2026-03-01'",
        "9999-02-11, 510, readings[1].date, '9999 (year) is outside 1900 to 2200 (year)'",
        "2026-03-11, NaN, readings[1].runHours, 'NaN h is outside 0 to 1000000000 h'"
    })
    void refusesMetersThatCannotBe(String date, double hours, String field, String message) {
        assertThatExceptionOfType(OutOfRange.class)
                .isThrownBy(() -> steady(List.of(reading("2026-03-01", 500), reading(date, hours))))
                .withMessage(message)
                .satisfies(refusal -> assertThat(refusal.field()).isEqualTo(field));
    }
}
