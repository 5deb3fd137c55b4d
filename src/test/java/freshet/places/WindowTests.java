package freshet.places;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.Random;
import org.junit.jupiter.api.Test;

class WindowTests {

    private static Window window(String from, String to) {
        return new Window(1, 1, WindowKind.OPENING, "Opening", MonthDay.parse("--" + from), MonthDay.parse("--" + to));
    }

    private static LocalDate day(String day) {
        return LocalDate.parse(day);
    }

    @Test
    void opensAndFallsDueInTheSameYear() {
        Span span = window("02-15", "03-20").startingIn(2026);

        assertThat(span.opensOn()).isEqualTo("2026-02-15");
        assertThat(span.dueOn()).isEqualTo("2026-03-20");
        assertThat(span.label()).isEqualTo("2026");
    }

    @Test
    void passesTheEndOfTheYear() {
        Window running = window("10-01", "05-15");
        Span span = running.startingIn(2025);

        assertThat(running.wraps()).isTrue();
        assertThat(span.dueOn()).isEqualTo("2026-05-15");
        assertThat(span.label()).isEqualTo("2025/26");
        assertThat(running.startingIn(1999).label()).isEqualTo("1999/00");
    }

    @Test
    void readsThe29thOfFebruaryAsThe28thInACommonYear() {
        Window window = window("02-29", "03-10");

        assertThat(window.startingIn(2028).opensOn()).isEqualTo("2028-02-29");
        assertThat(window.startingIn(2027).opensOn()).isEqualTo("2027-02-28");
        assertThat(window("11-01", "02-29").startingIn(2027).dueOn()).isEqualTo("2028-02-29");
        assertThat(window("11-01", "02-29").startingIn(2026).dueOn()).isEqualTo("2027-02-28");
    }

    @Test
    void findsTheTurnThatBeganInTheYearBefore() {
        assertThat(window("10-01", "05-15").spans(day("2026-05-15"), day("2026-06-01")))
                .extracting(Span::label)
                .containsExactly("2025/26");
        assertThat(window("10-01", "05-15").spans(day("2026-05-16"), day("2026-09-30")))
                .isEmpty();
        assertThat(window("10-01", "05-15").spans(day("2025-01-01"), day("2025-12-31")))
                .extracting(Span::label)
                .containsExactly("2024/25", "2025/26");
    }

    /** In the south the opening before the winter rain and the closing after it lie in one calendar year. */
    @Test
    void knowsTheSouthernYear() {
        Window closing = window("12-10", "01-20");

        assertThat(closing.spans(day("2026-01-01"), day("2026-12-31")))
                .extracting(Span::opensOn)
                .containsExactly(day("2025-12-10"), day("2026-12-10"));
    }

    /** Whatever the window and the days asked for: a turn is found exactly when one of its days lies among them. */
    @Test
    void findsExactlyTheTurnsThatTouchTheDaysAskedFor() {
        Random random = new Random(20261125);
        for (int round = 0; round < 2000; round++) {
            Window window = new Window(1, 1, WindowKind.RUNNING, "w", anyDay(random), anyDay(random));
            LocalDate first = day("2023-01-01").plusDays(random.nextInt(2000));
            LocalDate last = first.plusDays(random.nextInt(800));
            var found = window.spans(first, last);

            assertThat(found).isSortedAccordingTo((a, b) -> a.opensOn().compareTo(b.opensOn()));
            for (int year = 2020; year <= 2032; year++) {
                Span span = window.startingIn(year);
                boolean touches = first.datesUntil(last.plusDays(1)).anyMatch(span::contains);
                assertThat(found.contains(span)).isEqualTo(touches);
                assertThat(span.opensOn()).isBeforeOrEqualTo(span.dueOn());
                assertThat(span.opensOn().getYear()).isEqualTo(year);
                assertThat(span.dueOn()).isBeforeOrEqualTo(span.opensOn().plusDays(366));
            }
        }
    }

    /** Two windows overlap exactly when, in some year, a day lies in both. */
    @Test
    void overlapsWhenADayLiesInBoth() {
        Random random = new Random(42);
        for (int round = 0; round < 500; round++) {
            Window one = new Window(1, 1, WindowKind.OPENING, "one", anyDay(random), anyDay(random));
            Window two = new Window(2, 1, WindowKind.OPENING, "two", anyDay(random), anyDay(random));
            boolean shared = day("2023-01-01")
                    .datesUntil(day("2029-01-01"))
                    .anyMatch(day -> !one.spans(day, day).isEmpty()
                            && !two.spans(day, day).isEmpty());

            assertThat(one.overlaps(two)).isEqualTo(shared);
            assertThat(two.overlaps(one)).isEqualTo(shared);
        }
    }

    @Test
    void overlapsItselfOnlyWhenItIsLongerThanTheYear() {
        Window leapDayToDayBefore = window("02-29", "02-28");

        assertThat(leapDayToDayBefore.overlaps(leapDayToDayBefore)).isTrue();
        Window wholeYear = window("03-01", "02-28");
        assertThat(wholeYear.overlaps(wholeYear)).isFalse();
        Window oneDay = window("03-01", "03-01");
        assertThat(oneDay.overlaps(oneDay)).isFalse();
    }

    private static MonthDay anyDay(Random random) {
        return MonthDay.from(day("2024-01-01").plusDays(random.nextInt(366)));
    }
}
