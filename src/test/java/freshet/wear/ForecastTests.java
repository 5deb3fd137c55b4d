package freshet.wear;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import freshet.places.Window;
import freshet.places.WindowKind;
import freshet.readings.MeterLog;
import freshet.reliability.HoursToThreshold;
import freshet.reliability.Interval;
import freshet.reliability.UsageRate;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Use in season and out, and the dates that follow. */
class ForecastTests {

    private static final LocalDate TODAY = LocalDate.of(2026, 3, 14);
    private static final SeasonCalendar NO_SEASON = new SeasonCalendar(List.of());

    private static Usage usage(MeterLog log) {
        return Usage.of(log, Logs.CHICAGO, NO_SEASON, TODAY);
    }

    private static HoursToThreshold to(double hours, double lower, double upper, double now) {
        return new HoursToThreshold(
                HoursToThreshold.Status.OK,
                hours,
                lower,
                new Interval(lower - 10, upper),
                null,
                Math.max(0, hours - now),
                Math.max(0, lower - now));
    }

    @Test
    void datesEvenUseToTheDay() {
        // two hours a day, to the last digit: no doubt in the use
        Usage usage = usage(Logs.log(
                "2026-01-01T18:00:00Z", 100,
                "2026-01-11T18:00:00Z", 120,
                "2026-02-10T18:00:00Z", 180,
                "2026-03-12T18:00:00Z", 240));
        assertThat(usage.hoursPerDay()).isCloseTo(2, within(1e-12));
        assertThat(usage.seasonHours()).isCloseTo(730, within(1e-9));
        Reaching reaching = Reaching.of(to(300, 280, 340, 240), usage, TODAY);
        assertThat(reaching.expectedOn()).isEqualTo(LocalDate.of(2026, 3, 12).plusDays(30));
        assertThat(reaching.notBeforeOn()).isEqualTo(LocalDate.of(2026, 3, 12).plusDays(20));
        assertThat(reaching.notAfterOn()).isEqualTo(LocalDate.of(2026, 3, 12).plusDays(50));
        assertThat(reaching.useBounded()).isTrue();
        assertThat(reaching.assumed()).isFalse();
        assertThat(reaching.passed()).isFalse();
        assertThat(reaching.dueByUse()).isFalse();
    }

    @Test
    void saysWhenItIsThereAlreadyOrShouldBe() {
        MeterLog log = Logs.log("2025-01-01T18:00:00Z", 0, "2025-07-01T18:00:00Z", 181);
        assertThat(Reaching.of(to(170, 150, 200, 181), usage(log), TODAY).passed())
                .isTrue();
        assertThat(Reaching.of(to(170, 150, 200, 181), usage(log), TODAY).expectedOn())
                .as("between the readings about it")
                .isEqualTo(LocalDate.of(2025, 7, 1));
        Reaching maybe = Reaching.of(to(190, 170, 230, 181), usage(log), TODAY);
        assertThat(maybe.passed()).isFalse();
        assertThat(maybe.maybePassed()).isTrue();
        assertThat(maybe.dueByUse())
                .as("nine hours at one a day were over long ago")
                .isTrue();
        Reaching ahead = Reaching.of(to(190, 185, 230, 181), usage(log), TODAY);
        assertThat(ahead.maybePassed()).isFalse();
        assertThat(ahead.useBounded()).as("one span bounds nothing").isFalse();
        assertThat(ahead.notBeforeOn()).isEqualTo(LocalDate.of(2025, 7, 5));
        assertThat(ahead.notAfterOn()).isNull();
    }

    @Test
    void hasNoDateWhereTheMeterTellsNoUse() {
        assertThat(usage(null)).isNull();
        assertThat(usage(Logs.log())).isNull();
        assertThat(usage(Logs.log("2026-01-01T18:00:00Z", 5))).isNull();
        assertThat(usage(Logs.log("2026-01-01T14:00:00Z", 5, "2026-01-01T18:00:00Z", 8)))
                .as("readings of one day")
                .isNull();
        // a meter that runs 2 % fast through a whole year shows more hours than there were
        assertThat(usage(Logs.log("2025-01-01T18:00:00Z", 0, "2026-01-01T18:00:00Z", 1.019 * 8760)))
                .isNull();
        Reaching reaching = Reaching.of(to(300, 280, 340, 240), null, TODAY);
        assertThat(reaching.expectedOn()).isNull();
        assertThat(reaching.notBeforeOn()).isNull();
        assertThat(reaching.notAfterOn()).isNull();
        Usage idle = usage(Logs.log("2025-01-01T18:00:00Z", 50, "2026-01-01T18:00:00Z", 50));
        assertThat(Reaching.of(to(300, 280, 340, 50), idle, TODAY).expectedOn()).isNull();
        assertThat(Reaching.of(HOURS_UNKNOWN, idle, TODAY)).isNull();
    }

    private static final HoursToThreshold HOURS_UNKNOWN =
            new HoursToThreshold(HoursToThreshold.Status.NOT_DECLINING, null, null, null, null, null, null);

    @Test
    void sharesUseOutBetweenSeasonAndRest() {
        // April to September in season; 183 days at 2 h, none in the rest
        SeasonCalendar calendar = new SeasonCalendar(
                List.of(new Window(1, 1, WindowKind.RUNNING, "summer", MonthDay.of(4, 1), MonthDay.of(9, 30))));
        Usage usage = Usage.of(
                Logs.log(
                        "2024-09-30T18:00:00Z", 100,
                        "2025-03-31T18:00:00Z", 100,
                        "2025-06-30T18:00:00Z", 282,
                        "2025-09-30T18:00:00Z", 466,
                        "2026-03-12T18:00:00Z", 466),
                Logs.CHICAGO,
                calendar,
                TODAY);
        assertThat(usage.parts())
                .extracting(UsageRate.PeriodUse::period)
                .containsExactly(SeasonPart.IN_SEASON, SeasonPart.OUT_OF_SEASON);
        assertThat(usage.parts().get(0).runHoursPerDay()).isCloseTo(2, within(1e-9));
        assertThat(usage.parts().get(1).runHoursPerDay()).isCloseTo(0, within(1e-9));
        assertThat(usage.seasonDays()).isEqualTo(183);
        assertThat(usage.seasonHours()).isCloseTo(366, within(1e-6));
        // 34 hours more: seventeen days of the next season
        assertThat(Reaching.of(to(500, 480, 520, 466), usage, TODAY).expectedOn())
                .isEqualTo(LocalDate.of(2026, 4, 17));
    }

    @Test
    void readsDaysInTheZoneOfThePlace() {
        // 02:00 UTC is still the day before in Chicago
        Usage usage = usage(Logs.log("2026-01-02T02:00:00Z", 100, "2026-01-12T02:00:00Z", 110));
        assertThat(usage.from()).isEqualTo(LocalDate.of(2026, 1, 1));
        assertThat(usage.to()).isEqualTo(LocalDate.of(2026, 1, 11));
    }
}
