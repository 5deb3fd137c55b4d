package freshet.notices;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class QuietHoursTests {

    private static final ZoneId CHICAGO = ZoneId.of("America/Chicago");

    private static QuietHours quiet(String from, String to) {
        return new QuietHours(LocalTime.parse(from), LocalTime.parse(to));
    }

    @Test
    void countsTheBeginningAndNotTheEnd() {
        QuietHours afternoon = quiet("13:00", "15:00");

        assertThat(afternoon.at(LocalTime.of(12, 59))).isFalse();
        assertThat(afternoon.at(LocalTime.of(13, 0))).isTrue();
        assertThat(afternoon.at(LocalTime.of(14, 59))).isTrue();
        assertThat(afternoon.at(LocalTime.of(15, 0))).isFalse();
    }

    @Test
    void passesMidnight() {
        QuietHours night = quiet("21:30", "06:00");

        assertThat(night.at(LocalTime.of(21, 29))).isFalse();
        assertThat(night.at(LocalTime.of(21, 30))).isTrue();
        assertThat(night.at(LocalTime.MIDNIGHT)).isTrue();
        assertThat(night.at(LocalTime.of(5, 59))).isTrue();
        assertThat(night.at(LocalTime.of(6, 0))).isFalse();
        assertThat(night.over(Instant.parse("2026-01-10T04:00:00Z"), CHICAGO)).isEqualTo("2026-01-10T12:00:00Z");
        assertThat(night.over(Instant.parse("2026-01-10T07:00:00Z"), CHICAGO)).isEqualTo("2026-01-10T12:00:00Z");
    }

    /** Chicago goes from 02:00 to 03:00 on 8 March 2026, from 02:00 back to 01:00 on 1 November 2026; Lord Howe by half an hour. */
    @ParameterizedTest
    @CsvSource({
        "America/Chicago, 2026-03-07T00:00:00Z, 21:30, 06:00",
        "America/Chicago, 2026-03-07T00:00:00Z, 22:00, 02:00",
        "America/Chicago, 2026-03-07T00:00:00Z, 22:00, 02:30",
        "America/Chicago, 2026-03-07T00:00:00Z, 02:15, 02:45",
        "America/Chicago, 2026-10-31T00:00:00Z, 21:30, 06:00",
        "America/Chicago, 2026-10-31T00:00:00Z, 22:00, 01:30",
        "America/Chicago, 2026-10-31T00:00:00Z, 22:00, 02:00",
        "America/Chicago, 2026-10-31T00:00:00Z, 01:00, 01:45",
        "Australia/Lord_Howe, 2026-04-03T00:00:00Z, 22:00, 01:45",
        "Australia/Lord_Howe, 2026-10-02T00:00:00Z, 22:00, 02:15",
        "Pacific/Apia, 2026-01-01T00:00:00Z, 00:00, 05:15"
    })
    void endsAtTheFirstMinuteThatTheWallClockCallsLoud(ZoneId zone, Instant from, String begin, String end) {
        QuietHours quiet = quiet(begin, end);
        for (int minute = 0; minute < 3 * 24 * 60; minute += 7) {
            Instant now = from.plus(Duration.ofMinutes(minute));
            Instant first = now;
            while (quiet.at(first, zone)) {
                first = first.plus(Duration.ofMinutes(1));
            }
            assertThat(quiet.over(now, zone)).as("%s at %s", quiet, now).isEqualTo(first);
        }
    }
}
