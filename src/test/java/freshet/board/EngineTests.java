package freshet.board;

import static freshet.board.PaperUnit.covering;
import static freshet.board.PaperUnit.fixed;
import static freshet.board.PaperUnit.following;
import static freshet.board.PaperUnit.oncePerSeason;
import static freshet.board.PaperUnit.reachable;
import static freshet.board.PaperUnit.rule;
import static freshet.board.PaperUnit.when;
import static freshet.board.PaperUnit.window;
import static org.assertj.core.api.Assertions.assertThat;

import freshet.happenings.HappeningKind;
import freshet.places.WindowKind;
import freshet.rules.Applies;
import freshet.rules.CareRule;
import freshet.rules.Measure;
import freshet.rules.Trigger;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.MonthDay;
import java.time.Period;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** What each trigger makes due, by days worked out by hand. */
class EngineTests {

    private static final Trigger MONTHLY = new Trigger.Calendar(Period.ofMonths(1));
    private static final Trigger YEARLY = new Trigger.Calendar(Period.ofYears(1));
    private static final Trigger EVERY_100_H = new Trigger.RunHours(new BigDecimal("100"), null);
    private static final Trigger AFTER_STORM = new Trigger.Event(HappeningKind.STORM, false, 3);

    private final PaperUnit unit = new PaperUnit();

    private static LocalDate day(String day) {
        return LocalDate.parse(day);
    }

    @Test
    void countsASlidingIntervalFromTheDayItWasDone() {
        CareRule yearly = rule(1, "test", YEARLY);
        unit.today = day("2024-02-01");
        assertThat(unit.lines(yearly)).containsExactly("2025-01-17 2025-01-31 after:start");
        unit.today = day("2025-03-09");
        unit.sign(unit.wanted(yearly).get(0));
        assertThat(unit.lines(yearly)).containsExactly("2026-02-23 2026-03-09 after:1000");
    }

    @Test
    void countsAFixedIntervalFromItsAnchorAndShowsTheGap() {
        CareRule monthly = fixed(rule(1, "test", MONTHLY));
        unit.today = day("2024-02-20");
        assertThat(unit.lines(monthly))
                .containsExactly("2024-02-15 2024-02-29 k:1:2024-01-31", "2024-03-17 2024-03-31 k:2:2024-01-31");
        unit.sign(unit.wanted(monthly).get(0));
        assertThat(unit.lines(monthly)).containsExactly("2024-03-17 2024-03-31 k:2:2024-01-31");
        // April is never done: on the day that May opens, it is May that is asked for
        unit.today = day("2024-05-17");
        assertThat(unit.lines(monthly))
                .containsExactly("2024-05-17 2024-05-31 k:4:2024-01-31", "2024-06-16 2024-06-30 k:5:2024-01-31");
    }

    @Test
    void keepsFixedDaysApartThatWouldOpenBeforeTheLastWasDue() {
        CareRule weekly = fixed(rule(1, "test", new Trigger.Calendar(Period.ofWeeks(1))));
        unit.today = day("2024-02-07");
        assertThat(unit.lines(weekly))
                .containsExactly("2024-02-01 2024-02-07 k:1:2024-01-31", "2024-02-08 2024-02-14 k:2:2024-01-31");
    }

    @Test
    void foretellsRunHoursFromUseAndIsExactOnceTheyAreReached() {
        CareRule oil = rule(1, "oil", EVERY_100_H);
        unit.today = day("2024-06-01");
        assertThat(unit.lines(oil)).isEmpty();
        unit.read(unit.hours, day("2024-02-01"), 10);
        assertThat(unit.lines(oil)).isEmpty();
        // 10 h to 58 h in 120 days, from before 90 days ago: 0.4 h a day, 52 h left
        unit.read(unit.hours, day("2024-03-02"), 22);
        unit.read(unit.hours, day("2024-05-31"), 58);
        unit.today = day("2024-05-31");
        Wanted foretold = unit.wanted(oil).get(0);
        assertThat(foretold.days().dueOn()).isEqualTo("2024-10-08");
        assertThat(foretold.days().predicted()).isTrue();
        assertThat(foretold.days().why()).isEqualTo(new Why("hours.predicted", List.of("48.0", "100", "2024-05-31")));

        unit.read(unit.hours, day("2024-07-01"), 111);
        unit.read(unit.hours, day("2024-07-09"), 130);
        unit.today = day("2024-07-10");
        Wanted reached = unit.wanted(oil).get(0);
        assertThat(reached.occurrence()).isEqualTo(foretold.occurrence());
        assertThat(reached.days().dueOn()).isEqualTo("2024-07-01");
        assertThat(reached.days().predicted()).isFalse();

        // done on 9 July at 130 h: the next is foretold from there
        unit.sign(reached, day("2024-07-09"));
        unit.read(unit.hours, day("2024-08-08"), 160);
        unit.today = day("2024-08-08");
        assertThat(unit.wanted(oil).get(0).days().why().args()).containsExactly("30.0", "100", "2024-08-08");
    }

    @Test
    void asksForTheFirstOilSooner() {
        CareRule oil = rule(1, "oil", new Trigger.RunHours(new BigDecimal("100"), new BigDecimal("20")));
        unit.read(unit.hours, day("2024-01-31"), 0);
        unit.read(unit.hours, day("2024-02-10"), 21);
        unit.today = day("2024-02-11");
        assertThat(unit.lines(oil)).containsExactly("2024-02-01 2024-02-10 after:start");
        unit.sign(unit.wanted(oil).get(0), day("2024-02-10"));
        unit.read(unit.hours, day("2024-03-10"), 120.9);
        assertThat(unit.wanted(oil).get(0).days().predicted()).isTrue();
        unit.read(unit.hours, day("2024-03-11"), 121);
        assertThat(unit.lines(oil)).containsExactly("2024-02-26 2024-03-11 after:1000");
    }

    @Test
    void letsHoursRestInStorageButNotTheCalendar() {
        CareRule oil = rule(1, "oil", EVERY_100_H);
        CareRule law = rule(2, "law", YEARLY);
        unit.read(unit.hours, day("2024-02-01"), 0);
        unit.read(unit.hours, day("2024-04-01"), 120);
        unit.today = day("2024-10-01");
        assertThat(unit.wanted(oil, law)).hasSize(2);
        unit.layUp(day("2024-10-01"));
        Engine.Plan stored = unit.plan(oil, law);
        assertThat(stored.wanted()).extracting(wanted -> wanted.rule().id()).containsExactly(2L);
        assertThat(stored.resting()).containsOnlyKeys(1L).containsValue("STORED");
        unit.today = day("2025-03-01");
        unit.bringOut(day("2025-03-01"));
        assertThat(unit.lines(oil)).containsExactly("2024-03-18 2024-04-01 after:start");
    }

    @Test
    void takesStorageOutOfHowFastAPumpIsUsed() {
        CareRule oil = rule(1, "oil", EVERY_100_H);
        unit.read(unit.hours, day("2024-08-02"), 0);
        unit.layUp(day("2024-10-01"));
        unit.bringOut(day("2025-03-01"));
        unit.read(unit.hours, day("2025-03-31"), 90);
        unit.today = day("2025-04-01");
        // 90 h in 60 and 30 days of use: an hour a day
        assertThat(unit.wanted(oil).get(0).days().dueOn()).isEqualTo("2025-04-10");
    }

    @Test
    void movesWhatFellDueInStorageToTheDayOfOpening() {
        CareRule check = when(rule(1, "check", MONTHLY), Applies.IN_USE);
        CareRule turn = when(rule(2, "turn", MONTHLY), Applies.LAID_UP);
        unit.today = day("2024-10-15");
        unit.sign(unit.wanted(check).get(0));
        unit.layUp(day("2024-10-20"));
        Engine.Plan stored = unit.plan(check, turn);
        assertThat(stored.resting()).containsEntry(1L, "STORED");
        assertThat(unit.lines(check, turn)).containsExactly("2024-11-06 2024-11-20 after:start");
        unit.today = day("2025-03-01");
        unit.bringOut(day("2025-03-01"));
        assertThat(unit.lines(check, turn)).containsExactly("2025-02-15 2025-03-01 after:1000");
        assertThat(unit.plan(turn).resting()).containsEntry(2L, "IN_USE");
    }

    @Test
    void makesOneTaskOfTwoStorms() {
        CareRule look = rule(1, "look", AFTER_STORM);
        unit.happened(7, HappeningKind.STORM, day("2024-06-01"));
        unit.happened(8, HappeningKind.STORM, day("2024-06-02"));
        unit.happened(9, HappeningKind.POWER_FAILURE, day("2024-06-02"));
        unit.today = day("2024-06-03");
        assertThat(unit.lines(look)).containsExactly("2024-06-01 2024-06-04 event:7");
        unit.sign(unit.wanted(look).get(0));
        assertThat(unit.lines(look)).isEmpty();
        unit.happened(10, HappeningKind.STORM, day("2024-06-05"));
        unit.today = day("2024-06-06");
        assertThat(unit.lines(look)).containsExactly("2024-06-05 2024-06-08 event:10");
        unit.today = day("2025-06-07");
        assertThat(unit.lines(look)).isEmpty();
    }

    @Test
    void heedsOnlyTheFirstOfAKindSinceThePumpWasOpened() {
        CareRule look = rule(1, "look", new Trigger.Event(HappeningKind.FOUL_USE, true, 0));
        unit.provedAt = unit.noon(day("2024-03-01"));
        unit.happened(1, HappeningKind.FOUL_USE, day("2024-02-20"));
        unit.happened(2, HappeningKind.FOUL_USE, day("2024-04-01"));
        unit.happened(3, HappeningKind.FOUL_USE, day("2024-04-10"));
        unit.today = day("2024-04-05");
        unit.sign(unit.wanted(look).get(0));
        unit.today = day("2024-04-11");
        assertThat(unit.lines(look)).isEmpty();
        unit.provedAt = unit.noon(day("2024-04-09"));
        assertThat(unit.lines(look)).containsExactly("2024-04-10 2024-04-10 event:3");
    }

    @Test
    void asksAfterAMoveAndAfterALongRest() {
        CareRule settle = rule(1, "settle", new Trigger.Relocated(2));
        CareRule idle = rule(2, "exercise", new Trigger.Idle(30, 5));
        unit.moves.add(new Occasion(4, null, unit.noon(day("2024-05-01")), day("2024-05-01")));
        unit.usedOn = day("2024-05-01");
        unit.today = day("2024-05-31");
        assertThat(unit.lines(settle, idle)).containsExactly("2024-05-01 2024-05-03 moved:4");
        unit.today = day("2024-06-01");
        assertThat(unit.lines(idle)).containsExactly("2024-05-31 2024-06-05 idle:2024-05-01");
        unit.onHire = true;
        assertThat(unit.lines(idle)).isEmpty();
        unit.onHire = false;
        unit.sign(unit.wanted(idle).get(0));
        unit.today = day("2024-07-02");
        assertThat(unit.lines(idle)).containsExactly("2024-07-01 2024-07-06 idle:2024-06-01");
    }

    @Test
    void namesAnEpisodeByItsFirstFigureBeyondTheLimit() {
        CareRule low = rule(1, "capacity", new Trigger.Condition(Measure.CAPACITY, 0.8, 14));
        List<Figure> tests = new ArrayList<>();
        unit.figures.put(Measure.CAPACITY, tests);
        tests.add(figure("1", "2024-03-01", 0.79));
        tests.add(figure("2", "2024-04-01", 0.80));
        unit.today = day("2024-06-01");
        assertThat(unit.lines(low)).isEmpty();
        tests.add(figure("3", "2024-05-01", 0.78));
        tests.add(figure("4", "2024-05-10", 0.70));
        assertThat(unit.lines(low)).containsExactly("2024-05-01 2024-05-15 test:3");
        unit.sign(unit.wanted(low).get(0));
        assertThat(unit.lines(low)).isEmpty();
        tests.add(figure("5", "2024-06-02", 0.95));
        tests.add(figure("6", "2024-06-03", 0.6));
        assertThat(unit.lines(low)).containsExactly("2024-06-03 2024-06-17 test:6");
    }

    private Figure figure(String name, String day, double value) {
        return new Figure(name, unit.noon(day(day)), day(day), value);
    }

    @Test
    void seesAForetoldDayComeNearerByItself() {
        CareRule soon = rule(1, "plate", new Trigger.Condition(Measure.DAYS_TO_CAPACITY_LOW, 30, 7));
        unit.figures.put(Measure.DAYS_TO_CAPACITY_LOW, List.of(figure("3", "2024-05-01", 40)));
        unit.today = day("2024-05-11");
        assertThat(unit.lines(soon)).isEmpty();
        unit.today = day("2024-05-12");
        assertThat(unit.lines(soon)).containsExactly("2024-05-12 2024-05-19 days_to_capacity_low:3");
        unit.today = day("2024-05-20");
        assertThat(unit.lines(soon)).containsExactly("2024-05-12 2024-05-19 days_to_capacity_low:3");
    }

    @Test
    void countsLargerWorkInsideTheWindowButNotFiveMonthsEarly() {
        CareRule small = rule(1, "small", YEARLY);
        CareRule large = covering(rule(2, "large", new Trigger.Calendar(Period.ofYears(3))), "small");
        Wanted service =
                new Wanted(large, "after:start", "", unit.wanted(large).get(0).days());
        unit.sign(service, day("2024-08-31"));
        unit.today = day("2024-09-01");
        assertThat(unit.lines(small)).containsExactly("2025-01-17 2025-01-31 after:start");
        unit.sign(service, day("2025-01-17"));
        unit.today = day("2025-01-18");
        assertThat(unit.lines(small)).containsExactly("2026-01-03 2026-01-17 after:1001");
        CareRule legal = fixed(small);
        assertThat(unit.lines(legal)).containsExactly("2026-01-17 2026-01-31 k:2:2024-01-31");
    }

    @Test
    void letsTheEarliestOfSeveralTriggersWin() {
        CareRule oil = rule(1, "oil", YEARLY, EVERY_100_H, AFTER_STORM);
        unit.read(unit.hours, day("2024-02-01"), 0);
        unit.read(unit.hours, day("2024-03-01"), 10);
        unit.today = day("2024-03-01");
        assertThat(unit.wanted(oil)).singleElement().satisfies(wanted -> {
            assertThat(wanted.occurrence()).isEqualTo("after:start");
            assertThat(wanted.days().why().name()).isEqualTo("hours.predicted");
        });
        unit.hours.clear();
        assertThat(unit.lines(oil)).containsExactly("2025-01-17 2025-01-31 after:start");
        unit.happened(3, HappeningKind.STORM, day("2024-02-27"));
        assertThat(unit.lines(oil)).containsExactly("2024-02-27 2024-03-01 event:3");
    }

    @Test
    void movesWorkIntoTheMonthsInWhichItCanBeDone() {
        CareRule pit = reachable(rule(1, "pit", YEARLY), MonthDay.of(4, 1), MonthDay.of(10, 31));
        unit.today = day("2024-02-01");
        assertThat(unit.lines(pit)).containsExactly("2025-04-01 2025-04-15 after:start");
        unit.inCareFrom = day("2024-04-05");
        assertThat(unit.lines(pit)).containsExactly("2025-04-01 2025-04-05 after:start");
        CareRule winter = reachable(rule(1, "pit", YEARLY), MonthDay.of(11, 1), MonthDay.of(2, 29));
        assertThat(unit.lines(winter)).containsExactly("2025-11-01 2025-11-15 after:start");
        unit.inCareFrom = day("2024-01-20");
        assertThat(unit.lines(winter)).containsExactly("2025-01-06 2025-01-20 after:start");
    }

    @Test
    void asksOnlyOncePerSeason() {
        unit.windows.add(window(5, WindowKind.OPENING, 3, 1, 4, 10));
        CareRule wash = oncePerSeason(rule(1, "wash", new Trigger.Calendar(Period.ofMonths(4))));
        unit.today = day("2024-05-20");
        unit.sign(unit.wanted(wash).get(0));
        // due 20 September, in the season of 1 March in which it was done
        assertThat(unit.lines(wash)).containsExactly("2025-03-01 2025-03-15 after:1000");
        unit.windows.clear();
        assertThat(unit.lines(wash)).containsExactly("2025-01-01 2025-01-15 after:1000");
    }

    @Test
    void keepsTheScheduleOfAPositionWhenItsPumpIsReplaced() {
        CareRule pit = following(rule(1, "pit", YEARLY));
        unit.positionId = 9L;
        unit.positionSince = day("2020-05-01");
        unit.today = day("2024-02-01");
        unit.positionWorks.add(new Work(
                77,
                1,
                "after:start@9",
                "pit",
                Set.of(),
                day("2023-05-01"),
                day("2023-05-01"),
                unit.noon(day("2023-05-02")),
                day("2023-05-02"),
                1));
        assertThat(unit.lines(pit)).containsExactly("2024-04-18 2024-05-02 after:77");
        assertThat(unit.lines(fixed(pit))).containsExactly("2024-04-17 2024-05-01 k:4:2020-05-01@9");
        unit.positionWorks.clear();
        unit.positionSince = day("2024-01-10");
        assertThat(unit.lines(pit)).containsExactly("2024-12-27 2025-01-10 after:start@9");
    }

    @Test
    void turnsDaysAtMidnightOfThePlace() {
        unit.zone = ZoneId.of("America/Havana");
        unit.windows.add(window(5, WindowKind.OPENING, 3, 8, 3, 20));
        SiteDays site = unit.facts().site();
        assertThat(site.day(Instant.parse("2026-03-08T04:59:59Z"))).isEqualTo("2026-03-07");
        assertThat(site.day(Instant.parse("2026-03-08T05:00:00Z"))).isEqualTo("2026-03-08");
        assertThat(site.begin(day("2026-03-08"))).isEqualTo("2026-03-08T05:00:00Z");
    }
}
