package freshet.wear;

import static freshet.wear.SeasonPart.ALL_YEAR;
import static freshet.wear.SeasonPart.IN_SEASON;
import static freshet.wear.SeasonPart.OUT_OF_SEASON;
import static org.assertj.core.api.Assertions.assertThat;

import freshet.places.Window;
import freshet.places.WindowKind;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import org.junit.jupiter.api.Test;

class SeasonCalendarTests {

    private static Window window(WindowKind kind, String from, String to) {
        return new Window(1, 1, kind, "window", MonthDay.parse("--" + from), MonthDay.parse("--" + to));
    }

    private static SeasonPart part(SeasonCalendar calendar, String day) {
        return calendar.part(LocalDate.parse(day));
    }

    @Test
    void hasOnePartWithoutASeason() {
        SeasonCalendar none = new SeasonCalendar(List.of());
        assertThat(part(none, "2026-01-01")).isEqualTo(ALL_YEAR);
        assertThat(none.seasonDays(LocalDate.of(2026, 3, 1))).isEqualTo(365);
        assertThat(part(new SeasonCalendar(List.of(window(WindowKind.OPENING, "02-15", "03-20"))), "2026-02-20"))
                .as("an opening that nothing closes")
                .isEqualTo(ALL_YEAR);
    }

    @Test
    void lastsFromAnOpeningToTheEndOfTheNextClosing() {
        SeasonCalendar north = new SeasonCalendar(
                List.of(window(WindowKind.OPENING, "02-15", "03-20"), window(WindowKind.CLOSING, "10-01", "11-15")));
        assertThat(part(north, "2026-02-14")).isEqualTo(OUT_OF_SEASON);
        assertThat(part(north, "2026-02-15")).isEqualTo(IN_SEASON);
        assertThat(part(north, "2026-07-01")).isEqualTo(IN_SEASON);
        assertThat(part(north, "2026-11-15")).isEqualTo(IN_SEASON);
        assertThat(part(north, "2026-11-16")).isEqualTo(OUT_OF_SEASON);
        // 15 February to 15 November of a common year
        assertThat(north.seasonDays(LocalDate.of(2026, 1, 1))).isEqualTo(319 - 46 + 1);
    }

    @Test
    void passesTheYearsEndInTheSouth() {
        SeasonCalendar south = new SeasonCalendar(
                List.of(window(WindowKind.OPENING, "09-01", "09-20"), window(WindowKind.CLOSING, "03-20", "04-05")));
        assertThat(part(south, "2025-12-31")).isEqualTo(IN_SEASON);
        assertThat(part(south, "2026-01-01")).isEqualTo(IN_SEASON);
        assertThat(part(south, "2026-04-05")).isEqualTo(IN_SEASON);
        assertThat(part(south, "2026-04-06")).isEqualTo(OUT_OF_SEASON);
        assertThat(part(south, "2026-08-31")).isEqualTo(OUT_OF_SEASON);
    }

    @Test
    void isThatOfTheRunningWindowsWhereThereAreSome() {
        SeasonCalendar heating = new SeasonCalendar(
                List.of(window(WindowKind.RUNNING, "10-01", "05-15"), window(WindowKind.OPENING, "09-01", "09-30")));
        assertThat(part(heating, "2026-09-15")).isEqualTo(OUT_OF_SEASON);
        assertThat(part(heating, "2026-10-01")).isEqualTo(IN_SEASON);
        assertThat(part(heating, "2027-05-15")).isEqualTo(IN_SEASON);
        assertThat(part(heating, "2027-05-16")).isEqualTo(OUT_OF_SEASON);
    }

    @Test
    void readsTheTwentyNinthOfFebruaryInEveryYear() {
        SeasonCalendar leap = new SeasonCalendar(List.of(window(WindowKind.RUNNING, "02-29", "03-31")));
        assertThat(part(leap, "2024-02-28")).isEqualTo(OUT_OF_SEASON);
        assertThat(part(leap, "2024-02-29")).isEqualTo(IN_SEASON);
        assertThat(part(leap, "2026-02-28")).isEqualTo(IN_SEASON);
        assertThat(part(leap, "2026-02-27")).isEqualTo(OUT_OF_SEASON);
    }
}
