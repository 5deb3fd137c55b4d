package freshet.hands;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ForecastTests {

    private static final LocalDate SUNDAY = LocalDate.of(2027, 3, 14);
    private static final LocalDate OPENS = LocalDate.of(2027, 2, 15);
    private static final LocalDate DUE = LocalDate.of(2027, 3, 20);

    private final List<Work> works = new ArrayList<>();

    private void add(int count, String tag, long site, LocalDate due, int minutes) {
        for (int i = 1; i <= count; i++) {
            long id = works.size() + 1;
            works.add(new Work(
                    id, id, "%s-%02d".formatted(tag, i), "Opening", site, "Site " + site, OPENS, due, minutes));
        }
    }

    private static Hand hand(String name, int minutes, LocalDate... off) {
        return new Hand(name.hashCode(), name, minutes, Set.of(off), 0);
    }

    /** 28 × 35 + 22 × 40 + 12 × 60 = 980 + 880 + 720 = 2,580 min = 43 h. */
    private void springOfPortAnsel() {
        add(28, "BF", 1, DUE, 35);
        add(22, "QM", 2, DUE, 40);
        add(12, "OS", 3, DUE, 60);
    }

    /** Two whole people with 850 min a week for care and one with two days of five: 2.4 × 850 = 2,040 min = 34 h. */
    private static List<Hand> twoAndTwoFifths() {
        return List.of(hand("Ilse", 850), hand("Freya", 850), hand("Teo", 340));
    }

    @Test
    void fallsShortByNineHoursInTheEleventhWeekWithTwoAndTwoFifthsPeople() {
        springOfPortAnsel();
        Outlook outlook = new Forecast(SUNDAY, works, twoAndTwoFifths(), new FindingsShare(0, 0)).outlook(1290, 860);

        assertThat(outlook.end()).isEqualTo(DUE);
        assertThat(outlook.tasks()).isEqualTo(62);
        assertThat(outlook.leftMinutes()).isEqualTo(2580).isEqualTo(43 * 60);
        assertThat(outlook.handsMinutes()).isEqualTo(2040);
        assertThat(outlook.weeks())
                .containsExactly(
                        new Outlook.Week(LocalDate.of(2027, 3, 8), 10, 0, 0, 0, 0),
                        new Outlook.Week(LocalDate.of(2027, 3, 15), 11, 2580, 2040, 2040, 540));
        assertThat(outlook.firstShort().orElseThrow().shortMinutes()).isEqualTo(9 * 60);
        // by tag: BF 980, OS 720, so 340 min are left for QM: 8 of 40 min are done, the ninth is begun, 14 are late
        assertThat(outlook.late())
                .hasSize(14)
                .allSatisfy(late -> assertThat(late.tag()).startsWith("QM"));
        assertThat(outlook.late().get(0).tag()).isEqualTo("QM-09");
        assertThat(outlook.late().get(0).why()).isEqualTo(Outlook.Why.HANDS);
        assertThat(outlook.late().get(0).aheadMinutes()).isEqualTo(980 + 720 + 8 * 40);
        assertThat(outlook.late().get(0).handsMinutes()).isEqualTo(2040);
        assertThat(outlook.late().get(0).doneOn()).isEqualTo(LocalDate.of(2027, 3, 22));
        // 540 min are left for the week after, 408 a day: Monday 408, Tuesday the other 132
        assertThat(outlook.finishedOn()).isEqualTo(LocalDate.of(2027, 3, 23));
        // 2,580 min at 1,290 a week are 14 days, at 860 a week 21
        assertThat(outlook.pace().earliest()).isEqualTo(SUNDAY.plusDays(14));
        assertThat(outlook.pace().latest()).isEqualTo(SUNDAY.plusDays(21));
        assertThat(outlook.sites())
                .extracting(Outlook.SiteWeeks::siteName, Outlook.SiteWeeks::total)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple("Site 1", 980),
                        org.assertj.core.groups.Tuple.tuple("Site 2", 880),
                        org.assertj.core.groups.Tuple.tuple("Site 3", 720));
    }

    @Test
    void addsWhatWillBeFoundAndTakesAwayTheWeeksOff() {
        springOfPortAnsel();
        Outlook found = new Forecast(SUNDAY, works, twoAndTwoFifths(), FindingsShare.USUAL).outlook(0, 860);
        // 2,580 × 1.3 = 3,354; 3,354 − 2,040 = 1,314
        assertThat(found.minutes()).isEqualTo(3354);
        assertThat(found.firstShort().orElseThrow().shortMinutes()).isEqualTo(1314);
        // BF 28 × 45.5 = 1,274, the other 766 min do 9 of OS at 78: 3 OS and 22 QM are late
        assertThat(found.late()).hasSize(25);
        assertThat(found.late().get(0).tag()).isEqualTo("OS-10");
        assertThat(found.pace().latest()).isNull();

        List<Hand> away = List.of(
                hand("Ilse", 850, LocalDate.of(2027, 3, 15)),
                hand("Freya", 850, LocalDate.of(2027, 3, 15)),
                hand("Teo", 340));
        Outlook alone = new Forecast(SUNDAY, works, away, new FindingsShare(0, 0)).outlook(0, 0);
        assertThat(alone.handsMinutes()).isEqualTo(340);
        assertThat(alone.firstShort().orElseThrow().shortMinutes()).isEqualTo(2580 - 340);
        assertThat(alone.pace().earliest()).isNull();
        Outlook nobody = new Forecast(SUNDAY, works, List.of(), FindingsShare.USUAL).outlook(0, 0);
        assertThat(nobody.finishedOn()).isNull();
        assertThat(nobody.late())
                .hasSize(62)
                .allSatisfy(late -> assertThat(late.why()).isEqualTo(Outlook.Why.NO_HANDS));
    }

    @Test
    void countsOverdueWorkNowNumbersWeeksOverTheYearAndBeginsNothingEarly() {
        LocalDate monday = LocalDate.of(2026, 12, 28);
        works.add(new Work(1, 1, "A-1", "Closing", 1, "S", monday.minusDays(60), monday.minusDays(20), 100));
        works.add(new Work(2, 2, "B-1", "Check", 1, "S", monday, LocalDate.of(2027, 1, 13), 100));
        works.add(new Work(3, 3, "C-1", "Check", 1, "S", LocalDate.of(2027, 1, 13), LocalDate.of(2027, 1, 13), 100));
        Outlook outlook =
                new Forecast(monday, works, List.of(hand("Ilse", 250)), new FindingsShare(0, 0)).outlook(0, 0);

        assertThat(outlook.weeks()).extracting(Outlook.Week::number).containsExactly(53, 1, 2);
        assertThat(outlook.weeks()).extracting(Outlook.Week::dueMinutes).containsExactly(100, 0, 200);
        // 50 a day: A-1 on the 29th, B-1 on the 31st, then nothing may be begun until the 13th, which has 50 of the 100
        assertThat(outlook.weeks()).extracting(Outlook.Week::workedMinutes).containsExactly(200, 0, 50);
        assertThat(outlook.weeks()).extracting(Outlook.Week::shortMinutes).containsExactly(0, 0, 50);
        assertThat(outlook.late())
                .extracting(Outlook.Late::tag, Outlook.Late::why)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple("A-1", Outlook.Why.OVERDUE),
                        org.assertj.core.groups.Tuple.tuple("C-1", Outlook.Why.HANDS));
        assertThat(outlook.bars())
                .hasSize(3)
                .allSatisfy(bar -> assertThat(bar.hands()).isBetween(12.0, 172.0));
    }

    /** Where everything is open, what is missing at a week's end is what is due by then less the hands until then, if that is more than 0. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void missesWhatIsDueLessTheHandsUntilThen(long seed) {
        Random random = new Random(seed);
        LocalDate today = SUNDAY.plusDays(random.nextInt(7));
        for (int i = 0; i < 40; i++) {
            add(1, "P" + i, i % 3, today.plusDays(random.nextInt(60)), 10 + random.nextInt(80));
        }
        FindingsShare findings = new FindingsShare(random.nextInt(60), 0);
        List<Hand> hands = List.of(hand("a", 100 + random.nextInt(300), Forecast.monday(today.plusDays(14))));
        Outlook outlook = new Forecast(today, works, hands, findings).outlook(0, 0);

        int handsUntil = 0;
        for (Outlook.Week week : outlook.weeks()) {
            handsUntil += week.handsMinutes();
            LocalDate last = week.monday().plusDays(6);
            double due = works.stream()
                    .filter(work -> !work.dueOn().isAfter(last))
                    .mapToInt(Work::minutes)
                    .sum();
            double missing = Math.max(0, due * findings.factor() - handsUntil);
            assertThat((double) week.shortMinutes())
                    .isCloseTo(
                            missing,
                            org.assertj.core.data.Offset.offset(
                                    1.5 + outlook.weeks().size()));
        }
        assertThat(outlook.weeks().stream().mapToInt(Outlook.Week::dueMinutes).sum())
                .isCloseTo(
                        outlook.minutes(),
                        org.assertj.core.data.Offset.offset(outlook.weeks().size()));
    }
}
