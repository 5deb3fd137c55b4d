package freshet.notices;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

class ChoicesTests {

    private static final ZoneId CHICAGO = ZoneId.of("America/Chicago");

    private static Choices chosen(Rhythm rhythm, int hour, String at) {
        return new Choices(
                1,
                "ilse@ansel.example",
                null,
                null,
                rhythm,
                DayOfWeek.MONDAY,
                hour,
                null,
                true,
                Set.of(),
                true,
                7,
                true,
                Instant.parse(at),
                1);
    }

    private static Optional<LocalDate> day(Choices its, String now) {
        return its.digestDay(Instant.parse(now), CHICAGO);
    }

    @Test
    void owesADailyDigestFromItsHourToMidnightAtThePlace() {
        Choices daily = chosen(Rhythm.DAILY, 6, "2026-01-01T00:00:00Z");

        assertThat(day(daily, "2026-01-10T11:59:59Z")).isEmpty();
        assertThat(day(daily, "2026-01-10T12:00:00Z")).contains(LocalDate.of(2026, 1, 10));
        assertThat(day(daily, "2026-01-11T05:59:59Z")).contains(LocalDate.of(2026, 1, 10));
        assertThat(day(daily, "2026-01-11T06:00:00Z")).isEmpty();
    }

    @Test
    void owesAWeeklyDigestUntilTheNext() {
        Choices weekly = chosen(Rhythm.WEEKLY, 6, "2026-01-01T00:00:00Z");

        assertThat(day(weekly, "2026-01-05T11:59:00Z")).isEmpty();
        assertThat(day(weekly, "2026-01-05T12:00:00Z")).contains(LocalDate.of(2026, 1, 5));
        assertThat(day(weekly, "2026-01-12T11:59:00Z")).contains(LocalDate.of(2026, 1, 5));
        assertThat(day(weekly, "2026-01-12T12:00:00Z")).contains(LocalDate.of(2026, 1, 12));
    }

    @Test
    void owesNothingWhoseHourWasBeforeTheChoice() {
        Choices daily = chosen(Rhythm.DAILY, 6, "2026-01-10T12:00:01Z");

        assertThat(day(daily, "2026-01-10T20:00:00Z")).isEmpty();
        assertThat(day(daily, "2026-01-11T12:00:00Z")).contains(LocalDate.of(2026, 1, 11));
    }

    @Test
    void owesOneADayAlsoWhenTheHourIsSkippedOrComesTwice() {
        assertThat(daysOwed(2, "2026-03-06T00:00:00Z")).containsExactly(days("2026-03-06", 4));
        assertThat(daysOwed(1, "2026-10-30T00:00:00Z")).containsExactly(days("2026-10-30", 4));
        // 02:00 does not exist on 8 March: the digest comes when the clock has jumped
        Choices atTwo = chosen(Rhythm.DAILY, 2, "2026-01-01T00:00:00Z");
        assertThat(day(atTwo, "2026-03-08T07:59:59Z")).isEmpty();
        assertThat(day(atTwo, "2026-03-08T08:00:00Z")).contains(LocalDate.of(2026, 3, 8));
    }

    private static List<LocalDate> daysOwed(int hour, String from) {
        Choices daily = chosen(Rhythm.DAILY, hour, "2026-01-01T00:00:00Z");
        List<LocalDate> owed = new ArrayList<>();
        Instant start =
                LocalDate.parse(from.substring(0, 10)).atStartOfDay(CHICAGO).toInstant();
        for (int quarter = 0; quarter < 4 * 24 * 4; quarter++) {
            daily.digestDay(start.plus(Duration.ofMinutes(15L * quarter)), CHICAGO)
                    .filter(day -> !owed.contains(day))
                    .ifPresent(owed::add);
        }
        return owed;
    }

    private static LocalDate[] days(String first, int count) {
        return LocalDate.parse(first)
                .datesUntil(LocalDate.parse(first).plusDays(count))
                .toArray(LocalDate[]::new);
    }
}
