package freshet.board;

import static freshet.care.CareYard.CHICAGO;
import static freshet.care.CareYard.LONG_AGO;
import static freshet.care.CareYard.allPass;
import static freshet.care.CareYard.closing;
import static freshet.care.CareYard.opening;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import freshet.FreshetTest;
import freshet.TestClock;
import freshet.care.Answer;
import freshet.care.Care;
import freshet.care.CareYard;
import freshet.care.SignOff;
import freshet.care.Task;
import freshet.checklists.CheckLine;
import freshet.checklists.Phase;
import freshet.people.Person;
import freshet.places.Places;
import freshet.places.Site;
import freshet.places.SiteDraft;
import freshet.places.WindowDraft;
import freshet.pumps.PumpKind;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import freshet.pumps.Whereabouts;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;

@FreshetTest
class PlanningTests {

    @Autowired
    Board board;

    @Autowired
    Care care;

    @Autowired
    CareYard yard;

    @Autowired
    JdbcClient database;

    @Autowired
    Places places;

    @Autowired
    Pumps pumps;

    @Autowired
    TestClock clock;

    Person ilse;

    @BeforeEach
    void midMarch() {
        clock.set("2026-03-14T14:00:00Z");
        ilse = yard.ilse();
    }

    /** "OPENING 2026-02-15 2026-03-20 OPEN" and so on, by day. */
    private List<String> plan(Unit unit) {
        return care.tasksOf(unit.id()).stream()
                .map(task -> "%s %s %s %s"
                        .formatted(
                                task.phase(),
                                task.opensOn(),
                                task.dueOn(),
                                task.stateWhy() == null ? task.state() : task.state() + " " + task.stateWhy()))
                .toList();
    }

    private Unit utility(String tag, Site site) {
        return yard.unit(tag, PumpKind.UTILITY_SUBMERSIBLE, site.id(), LONG_AGO);
    }

    @Test
    void plansTheTurnThatOpenedLastAndThoseOfTheYearAhead() {
        Unit unit = yard.unit("BF-01");

        assertThat(plan(unit))
                .containsExactly(
                        "CLOSING 2025-10-01 2025-11-15 OPEN",
                        "OPENING 2026-02-15 2026-03-20 OPEN",
                        "CLOSING 2026-10-01 2026-11-15 OPEN",
                        "OPENING 2027-02-15 2027-03-20 OPEN");
        Task opening = care.tasksOf(unit.id()).get(1);
        assertThat(opening.title()).isEqualTo("Opening 2026");
        assertThat(opening.why()).isEqualTo(new Why("season", List.of("Thaw opening", "2026-02-15", "2026-03-20")));
        assertThat(opening.minutes()).isEqualTo(35);
        assertThat(opening.siteName()).isEqualTo("Brackenfold Pump Yard");
    }

    @Test
    void asksNothingFromBeforeAUnitCameIntoCare() {
        Unit unit = yard.unit(
                "BF-02", PumpKind.UTILITY_SUBMERSIBLE, yard.brackenfold().id(), LocalDate.of(2026, 3, 14));

        assertThat(plan(unit))
                .containsExactly(
                        "OPENING 2026-02-15 2026-03-20 OPEN",
                        "CLOSING 2026-10-01 2026-11-15 OPEN",
                        "OPENING 2027-02-15 2027-03-20 OPEN");
    }

    @Test
    void givesEachKindItsChecklistAndAKindWhoseRulesRestNone() {
        long site = yard.brackenfold().id();
        database.sql("update care_rule set active = false where pump_kind = 'ENGINE_TRASH'")
                .update();
        for (PumpKind kind : PumpKind.values()) {
            Unit unit = yard.unit("K-" + kind.ordinal(), kind, site, LONG_AGO);
            boolean laidUp = kind == PumpKind.UTILITY_SUBMERSIBLE || kind == PumpKind.CIRCULATOR;
            if (kind == PumpKind.ENGINE_TRASH) {
                assertThat(care.tasksOf(unit.id())).isEmpty();
            } else {
                assertThat(care.tasksOf(unit.id()))
                        .as("%s", kind)
                        .extracting(Task::title)
                        .contains("Opening 2026", laidUp ? "Closing 2026" : "Check before frost 2026");
            }
        }
    }

    @Test
    void plansAWindowThatPassesTheYearsEnd() {
        Site site = yard.site("Mill Lane", CHICAGO, opening("Heating", 12, 20, 1, 10));
        Unit unit = utility("ML-01", site);

        assertThat(plan(unit))
                .containsExactly("OPENING 2025-12-20 2026-01-10 OPEN", "OPENING 2026-12-20 2027-01-10 OPEN");
        assertThat(care.tasksOf(unit.id()).get(0).title()).isEqualTo("Opening 2025/26");
    }

    @Test
    void plansTwoSeasonsAYearAndNone() {
        Site two = yard.site(
                "Two rains",
                ZoneId.of("Africa/Nairobi"),
                opening("Long rains", 2, 1, 3, 10),
                opening("Short rains", 9, 1, 10, 10));
        Site none = yard.site("Cellar without frost", CHICAGO);

        assertThat(plan(utility("TR-01", two)))
                .containsExactly(
                        "OPENING 2025-09-01 2025-10-10 OPEN",
                        "OPENING 2026-02-01 2026-03-10 OPEN",
                        "OPENING 2026-09-01 2026-10-10 OPEN",
                        "OPENING 2027-02-01 2027-03-10 OPEN");
        assertThat(plan(utility("CW-01", none))).isEmpty();
    }

    @Test
    void plansTheSouthernHalfOfTheWorld() {
        clock.set("2026-09-01T12:00:00Z");
        Site site = yard.site(
                "Southern yard",
                ZoneId.of("Australia/Hobart"),
                opening("Spring", 8, 15, 10, 10),
                closing("Autumn", 4, 15, 6, 10));

        assertThat(plan(utility("SO-01", site)))
                .containsExactly(
                        "CLOSING 2026-04-15 2026-06-10 OPEN",
                        "OPENING 2026-08-15 2026-10-10 OPEN",
                        "CLOSING 2027-04-15 2027-06-10 OPEN",
                        "OPENING 2027-08-15 2027-10-10 OPEN");
    }

    @Test
    void readsTheLeapDayAsTheDayBeforeItInACommonYear() {
        Site site = yard.site("Leap", CHICAGO, opening("Leap", 2, 29, 3, 10));
        Unit unit = utility("LE-01", site);
        assertThat(plan(unit))
                .containsExactly("OPENING 2026-02-28 2026-03-10 OPEN", "OPENING 2027-02-28 2027-03-10 OPEN");

        clock.set("2027-03-01T12:00:00Z");
        board.plan();
        assertThat(plan(unit))
                .containsExactly(
                        "OPENING 2026-02-28 2026-03-10 WITHDRAWN NEXT_OPENED",
                        "OPENING 2027-02-28 2027-03-10 OPEN",
                        "OPENING 2028-02-29 2028-03-10 OPEN");
    }

    @Test
    void turnsToTheNextTurnAtMidnightOfTheSite() {
        Unit east = utility("EA-01", yard.site("East", ZoneId.of("Pacific/Auckland"), opening("East", 7, 1, 7, 31)));
        Unit west = utility("WE-01", yard.site("West", ZoneId.of("Pacific/Honolulu"), opening("West", 7, 1, 7, 31)));

        clock.set("2026-06-30T11:59:59Z");
        board.plan();
        assertThat(plan(east).get(0)).isEqualTo("OPENING 2025-07-01 2025-07-31 OPEN");
        clock.set("2026-06-30T12:00:00Z");
        board.plan();
        assertThat(plan(east).get(0)).isEqualTo("OPENING 2025-07-01 2025-07-31 WITHDRAWN NEXT_OPENED");
        assertThat(plan(west).get(0)).isEqualTo("OPENING 2025-07-01 2025-07-31 OPEN");
        clock.set("2026-07-01T10:00:00Z");
        board.plan();
        assertThat(plan(west).get(0)).isEqualTo("OPENING 2025-07-01 2025-07-31 WITHDRAWN NEXT_OPENED");
    }

    @Test
    void countsDaysAcrossAChangeOfTheClocks() {
        // Havana leaves out midnight of 8 March 2026: the day begins at 1:00
        Site site = yard.site("Havana", ZoneId.of("America/Havana"), opening("Dry", 1, 10, 3, 7));
        utility("HA-01", site);

        clock.set("2026-03-08T04:59:59Z");
        assertThat(board.sites(0, 5).get(0).lines().get(0).daysOver()).isZero();
        clock.set("2026-03-08T05:00:00Z");
        board.plan();
        assertThat(board.sites(0, 5).get(0).lines().get(0).daysOver()).isOne();
        clock.set("2026-03-09T04:00:00Z");
        assertThat(board.sites(0, 5).get(0).lines().get(0).daysOver()).isEqualTo(2);
    }

    @Test
    void followsAUnitThatMoves() {
        Unit unit = yard.unit("BF-03");
        Site cellar = yard.site("Cellar", CHICAGO, opening("Late opening", 4, 1, 4, 30));
        pumps.move(unit.id(), Whereabouts.at(cellar.id()), clock.instant(), null, ilse);

        assertThat(plan(unit))
                .containsExactly(
                        "OPENING 2025-04-01 2025-04-30 OPEN",
                        "CLOSING 2025-10-01 2025-11-15 WITHDRAWN MOVED",
                        "OPENING 2026-02-15 2026-03-20 WITHDRAWN MOVED",
                        "OPENING 2026-04-01 2026-04-30 OPEN",
                        "CLOSING 2026-10-01 2026-11-15 WITHDRAWN MOVED",
                        "OPENING 2027-02-15 2027-03-20 WITHDRAWN MOVED");
        clock.set("2026-03-15T14:00:00Z");
        pumps.move(unit.id(), Whereabouts.at(yard.brackenfold().id()), clock.instant(), null, ilse);
        assertThat(plan(unit))
                .contains("OPENING 2026-02-15 2026-03-20 OPEN", "OPENING 2026-04-01 2026-04-30 WITHDRAWN MOVED");
    }

    @Test
    void doesNotAskAgainForWorkThatTheUnitBroughtAlong() {
        Unit unit = yard.unit("BF-03");
        Task opening = care.tasksOf(unit.id()).get(1);
        care.sign(opening.id(), SignOff.of(0, allPass(care.worksheet(opening.id()), ilse)), ilse);
        Site cellar = yard.site("Cellar", CHICAGO, opening("Cellar opening", 3, 1, 4, 15));
        pumps.move(unit.id(), Whereabouts.at(cellar.id()), clock.instant(), null, ilse);

        assertThat(plan(unit))
                .contains("OPENING 2026-02-15 2026-03-20 SIGNED", "OPENING 2027-03-01 2027-04-15 OPEN")
                .doesNotContain("OPENING 2026-03-01 2026-04-15 OPEN");
    }

    @Test
    void keepsATaskThatSomebodyHasBegun() {
        Unit unit = yard.unit("BF-03");
        Task opening = care.tasksOf(unit.id()).get(1);
        CheckLine cord = CareYard.line(care.worksheet(opening.id()), "Are cord, plug");
        care.saveAnswers(opening.id(), 0, List.of(Answer.of(cord.id(), CheckLine.YES)), ilse);
        Site cellar = yard.site("Cellar", CHICAGO, opening("Cellar opening", 3, 1, 4, 15));
        pumps.move(unit.id(), Whereabouts.at(cellar.id()), clock.instant(), null, ilse);
        assertThat(plan(unit)).contains("OPENING 2026-02-15 2026-03-20 OPEN", "OPENING 2026-03-01 2026-04-15 OPEN");

        // signing it does the other too
        care.sign(opening.id(), SignOff.of(1, allPass(care.worksheet(opening.id()), ilse)), ilse);
        assertThat(plan(unit)).contains("OPENING 2026-03-01 2026-04-15 WITHDRAWN DONE_ALREADY");
        List<String> before = plan(unit);
        board.plan();
        assertThat(plan(unit)).isEqualTo(before);
    }

    @Test
    void asksNothingOfARetiredUnitUntilItIsBroughtBack() {
        Unit unit = yard.unit("BF-03");
        pumps.retire(unit.id(), unit.version(), LocalDate.of(2026, 3, 14), "Scrapped", ilse);
        assertThat(plan(unit)).isNotEmpty().allMatch(line -> line.endsWith("WITHDRAWN RETIRED"));

        pumps.bringBack(unit.id(), pumps.unit(unit.id()).version(), ilse);
        assertThat(plan(unit)).isNotEmpty().allMatch(line -> line.endsWith("OPEN"));
    }

    @Test
    void followsAWindowThatChangesItsDaysOrGoes() {
        Unit unit = yard.unit("BF-03");
        Site site = yard.brackenfold();
        site = change(site, opening("Thaw opening", 2, 20, 4, 5), closing("Frost closing", 10, 1, 11, 15));
        assertThat(plan(unit))
                .containsExactly(
                        "CLOSING 2025-10-01 2025-11-15 OPEN",
                        "OPENING 2026-02-20 2026-04-05 OPEN",
                        "CLOSING 2026-10-01 2026-11-15 OPEN",
                        "OPENING 2027-02-20 2027-04-05 OPEN");

        change(site, opening("Thaw opening", 2, 20, 4, 5));
        assertThat(plan(unit))
                .filteredOn(line -> line.startsWith("CLOSING"))
                .allMatch(line -> line.endsWith("WITHDRAWN NO_LONGER_DUE"));
    }

    @Test
    void doesNotAskAgainWhenAWindowIsReplacedAfterTheWork() {
        Unit unit = yard.unit("BF-03");
        Task opening = care.tasksOf(unit.id()).get(1);
        care.sign(opening.id(), SignOff.of(0, allPass(care.worksheet(opening.id()), ilse)), ilse);
        change(yard.brackenfold(), opening("Spring, said otherwise", 3, 1, 4, 15));

        assertThat(plan(unit))
                .contains("OPENING 2026-02-15 2026-03-20 SIGNED", "OPENING 2027-03-01 2027-04-15 OPEN")
                .doesNotContain("OPENING 2026-03-01 2026-04-15 OPEN");
    }

    private Site change(Site site, WindowDraft... windows) {
        return places.changeSite(
                site.id(), site.version(), new SiteDraft(site.name(), site.zone(), null, null, List.of(windows)), ilse);
    }

    @Test
    void plansOneZoneAndLeavesTheOthers() {
        Unit here = yard.unit("BF-01");
        Site south = yard.site("South", ZoneId.of("Pacific/Auckland"), opening("Spring", 8, 1, 9, 10));
        Unit there = utility("S-01", south);
        clock.set("2027-02-15T14:00:00Z");

        board.planZone(CHICAGO);
        assertThat(plan(here)).contains("OPENING 2028-02-15 2028-03-20 OPEN");
        assertThat(plan(there)).noneMatch(line -> line.contains("2027-08-01"));
        List<String> planned = plan(here);
        board.planZone(CHICAGO);
        assertThat(plan(here)).isEqualTo(planned);

        board.planZone(ZoneId.of("Pacific/Auckland"));
        assertThat(plan(there)).contains("OPENING 2027-08-01 2027-09-10 OPEN");
        board.planZone(ZoneId.of("Asia/Kolkata"));
    }

    @Test
    void plansOnceWhenSeveralPlanAtTheSameMoment() throws Exception {
        Unit unit = yard.unit("BF-03");
        clock.set("2027-04-01T12:00:00Z");
        ExecutorService four = Executors.newFixedThreadPool(4);
        Callable<Void> planning = () -> {
            board.plan();
            return null;
        };
        try {
            for (Future<Void> each : four.invokeAll(List.of(planning, planning, planning, planning))) {
                each.get();
            }
        } finally {
            four.shutdownNow();
        }
        assertThat(plan(unit))
                .containsExactly(
                        "CLOSING 2025-10-01 2025-11-15 WITHDRAWN NEXT_OPENED",
                        "OPENING 2026-02-15 2026-03-20 WITHDRAWN NEXT_OPENED",
                        "CLOSING 2026-10-01 2026-11-15 OPEN",
                        "OPENING 2027-02-15 2027-03-20 OPEN",
                        "CLOSING 2027-10-01 2027-11-15 OPEN",
                        "OPENING 2028-02-15 2028-03-20 OPEN");
    }

    @Test
    void countsEachTurnOfTheSeason() {
        yard.unit("BF-01");
        Unit unit = yard.unit("BF-02");
        Task opening = care.tasksOf(unit.id()).get(1);
        care.sign(opening.id(), SignOff.of(0, allPass(care.worksheet(opening.id()), ilse)), ilse);

        SeasonCount count = board.seasons().stream()
                .filter(each -> each.span().opensOn().equals(LocalDate.of(2026, 2, 15)))
                .findFirst()
                .orElseThrow();
        assertThat(count.phase()).isEqualTo(Phase.OPENING);
        assertThat(count.done()).isOne();
        assertThat(count.left()).isOne();
        assertThat(count.minutesLeft()).isEqualTo(35);
        assertThat(count.siteName()).isEqualTo("Brackenfold Pump Yard");
    }

    @Test
    void putsWhatIsLateFirstOnTheBoard() {
        yard.unit("BF-01");
        yard.unit("BF-02");

        BoardSite yards = board.sites(7, 3).get(0);
        assertThat(yards.siteName()).isEqualTo("Brackenfold Pump Yard");
        assertThat(yards.late()).isEqualTo(2);
        assertThat(yards.soon()).isEqualTo(2);
        assertThat(yards.minutes()).isEqualTo(2 * 25 + 2 * 35);
        assertThat(yards.more()).isOne();
        assertThat(yards.lines())
                .extracting(BoardLine::tag, BoardLine::title, BoardLine::daysOver)
                .containsExactly(
                        tuple("BF-01", "Closing 2025", 119L),
                        tuple("BF-02", "Closing 2025", 119L),
                        tuple("BF-01", "Opening 2026", -6L));
        assertThat(board.sites(3, 3).get(0).soon()).isZero();
    }
}
