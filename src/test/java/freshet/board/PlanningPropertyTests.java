package freshet.board;

import static freshet.care.CareYard.allPass;
import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.TestClock;
import freshet.care.Care;
import freshet.care.CareYard;
import freshet.care.SignOff;
import freshet.care.Task;
import freshet.people.Person;
import freshet.places.Places;
import freshet.places.Site;
import freshet.places.WindowDraft;
import freshet.places.WindowKind;
import freshet.pumps.PumpKind;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import freshet.pumps.UnitArrival;
import freshet.pumps.UnitDraft;
import freshet.pumps.Whereabouts;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.MonthDay;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Random yards, from seeds that a failure names, against a slow oracle that walks the calendar day by day. */
@FreshetTest
class PlanningPropertyTests {

    private static final List<String> ZONES = List.of(
            "America/Chicago",
            "Pacific/Kiritimati",
            "Pacific/Pago_Pago",
            "Australia/Lord_Howe",
            "Asia/Kolkata",
            "Africa/Cairo");

    @Autowired
    Board board;

    @Autowired
    Care care;

    @Autowired
    CareYard yard;

    @Autowired
    Places places;

    @Autowired
    Pumps pumps;

    @Autowired
    TestClock clock;

    @Autowired
    JdbcClient database;

    Person ilse;
    Person freya;

    @BeforeEach
    void somewhen() {
        clock.set("2027-05-17T09:00:00Z");
        ilse = yard.ilse();
        freya = yard.freya();
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void plansWhatTheCalendarSays(long seed) {
        List<Unit> units = randomYard(new Random(seed), 12);
        board.plan();
        for (Unit unit : units) {
            assertThat(open(unit.id())).as("seed %d, %s", seed, unit.tag()).isEqualTo(expected(unit));
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13, 14})
    void changesNothingTheSecondTimeAndMindsNoOrder(long seed) {
        Random random = new Random(seed);
        List<Unit> units = randomYard(random, 12);
        board.plan();
        List<String> planned = rows();
        board.plan();
        assertThat(rows()).as("twice, seed %d", seed).isEqualTo(planned);

        database.sql("delete from task").update();
        List<Long> shuffled = new ArrayList<>(units.stream().map(Unit::id).toList());
        Collections.shuffle(shuffled, random);
        shuffled.forEach(id -> board.planUnits(Set.of(id)));
        assertThat(withoutIds(rows())).as("one by one, seed %d", seed).isEqualTo(withoutIds(planned));
    }

    @ParameterizedTest
    @ValueSource(longs = {21, 22, 23, 24})
    void owesTheSameAfterDaysWithoutPlanningAsWithPlanningEveryDay(long seed) {
        Random random = new Random(seed);
        List<Unit> units = randomYard(random, 6);
        board.plan();
        Instant start = clock.instant();
        int days = 20 + random.nextInt(200);
        for (int day = 1; day <= days; day += 1 + random.nextInt(9)) {
            clock.set(start.plus(Duration.ofDays(day)));
            board.plan();
        }
        clock.set(start.plus(Duration.ofDays(days)));
        board.plan();
        List<Set<String>> daily = units.stream().map(unit -> open(unit.id())).toList();

        database.sql("delete from task").update();
        clock.set(start);
        board.plan();
        clock.set(start.plus(Duration.ofDays(days)));
        board.plan();
        assertThat(units.stream().map(unit -> open(unit.id())).toList())
                .as("seed %d", seed)
                .isEqualTo(daily);
    }

    @ParameterizedTest
    @ValueSource(longs = {31, 32, 33, 34})
    void asksNoWorkTwiceThroughMovesSignaturesAndRetirements(long seed) {
        Random random = new Random(seed);
        List<Unit> units = randomYard(random, 6);
        List<Long> sites = places.sites().stream().map(Site::id).toList();
        for (int step = 0; step < 40; step++) {
            clock.advance(Duration.ofHours(random.nextInt(24 * 30)));
            Unit unit = pumps.unit(units.get(random.nextInt(units.size())).id());
            switch (random.nextInt(6)) {
                case 0, 1 -> move(unit, sites.get(random.nextInt(sites.size())));
                case 2, 3 -> signFirstOpen(unit);
                case 4 -> retireOrBringBack(unit);
                default -> board.plan();
            }
        }
        board.plan();
        List<String> planned = rows();
        board.plan();
        assertThat(rows()).as("seed %d", seed).isEqualTo(planned);
        assertThat(database.sql("""
                        select count(*) from task a join task b on b.unit_id = a.unit_id and b.rule_id = a.rule_id and b.id <> a.id
                        where a.state = 'SIGNED' and b.state = 'OPEN' and b.started_at is null
                          and b.opens_on <= a.due_on and b.due_on >= a.opens_on""").query(Integer.class).single())
                .as("signed and asked again, seed %d", seed)
                .isZero();
    }

    private void move(Unit unit, long siteId) {
        if (!unit.retired() && unit.stand().siteId() != siteId) {
            pumps.move(unit.id(), Whereabouts.at(siteId), clock.instant(), null, ilse);
        }
    }

    private void signFirstOpen(Unit unit) {
        care.tasksOf(unit.id()).stream()
                .filter(task -> task.openOn(LocalDate.ofInstant(clock.instant(), task.zone())))
                .findFirst()
                .ifPresent(task -> care.sign(
                        task.id(), SignOff.of(task.version(), allPass(care.worksheet(task.id()), freya)), freya));
    }

    private void retireOrBringBack(Unit unit) {
        if (unit.retired()) {
            pumps.bringBack(unit.id(), unit.version(), ilse);
        } else {
            LocalDate today = LocalDate.ofInstant(clock.instant(), unit.stand().zone());
            pumps.retire(unit.id(), unit.version(), today, "Worn out", ilse);
        }
    }

    @Test
    void plansTenThousandPumpsInSeconds() {
        Site site = yard.brackenfold();
        long model = yard.model(PumpKind.UTILITY_SUBMERSIBLE);
        List<UnitArrival> arrivals = new ArrayList<>();
        for (int i = 0; i < 10_000; i++) {
            arrivals.add(new UnitArrival(
                    new UnitDraft("T-" + i, null, model, null, CareYard.LONG_AGO, null), Whereabouts.at(site.id())));
        }
        pumps.takeInUnits(arrivals, ilse);
        assertThat(count()).isEqualTo(40_000);

        database.sql("delete from task").update();
        long start = System.nanoTime();
        board.plan();
        board.plan();
        Duration both = Duration.ofNanos(System.nanoTime() - start);
        assertThat(count()).isEqualTo(40_000);
        assertThat(both).isLessThan(Duration.ofSeconds(60));
    }

    private int count() {
        return database.sql("select count(*) from task where state = 'OPEN'")
                .query(Integer.class)
                .single();
    }

    private List<Unit> randomYard(Random random, int units) {
        List<Site> sites = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            WindowDraft[] windows = new WindowDraft[random.nextInt(4)];
            for (int w = 0; w < windows.length; w++) {
                windows[w] = window(random, w, windows.length);
            }
            sites.add(yard.site("Site " + i, ZoneId.of(ZONES.get(random.nextInt(ZONES.size()))), windows));
        }
        List<Unit> made = new ArrayList<>();
        for (int i = 0; i < units; i++) {
            PumpKind kind = PumpKind.values()[random.nextInt(PumpKind.values().length)];
            LocalDate inCareFrom = LocalDate.of(2024, 1, 1).plusDays(random.nextInt(1200));
            made.add(yard.unit(
                    "R-" + i, kind, sites.get(random.nextInt(sites.size())).id(), inCareFrom));
        }
        return made;
    }

    /** Windows of one site lie in their own part of the year, for the register refuses those that overlap. */
    private static WindowDraft window(Random random, int part, int parts) {
        LocalDate year = LocalDate.of(2028, 1, 1).plusDays(random.nextInt(20) + 366L * part / parts);
        LocalDate end = year.plusDays(random.nextInt(366 / parts - 40));
        WindowKind kind = WindowKind.values()[random.nextInt(3)];
        return new WindowDraft(null, kind, "Window " + part, MonthDay.from(year), MonthDay.from(end));
    }

    /** "OPENING 2026-02-15 2026-03-20" of what is open. */
    private Set<String> open(long unitId) {
        Set<String> open = new TreeSet<>();
        care.tasksOf(unitId).stream()
                .filter(Task::open)
                .forEach(task -> open.add(task.phase() + " " + task.opensOn() + " " + task.dueOn()));
        return open;
    }

    private Set<String> expected(Unit unit) {
        Set<String> expected = new TreeSet<>();
        Site site = places.site(unit.stand().siteId());
        LocalDate today = site.today(clock);
        site.windows().stream()
                .filter(window -> window.kind() != WindowKind.RUNNING)
                .forEach(window -> {
                    boolean last = true;
                    for (LocalDate day = today.plusDays(366); last; day = day.minusDays(1)) {
                        if (is(window.from(), day)) {
                            LocalDate due = day;
                            while (!is(window.to(), due)) {
                                due = due.plusDays(1);
                            }
                            last = day.isAfter(today);
                            if (!due.isBefore(unit.inCareFrom())) {
                                expected.add(window.kind() + " " + day + " " + due);
                            }
                        }
                    }
                });
        return expected;
    }

    private static boolean is(MonthDay wanted, LocalDate day) {
        boolean leapDay = wanted.equals(MonthDay.of(2, 29)) && !day.isLeapYear();
        return MonthDay.from(day).equals(leapDay ? MonthDay.of(2, 28) : wanted);
    }

    private List<String> rows() {
        return database.sql("""
                        select unit_id || ' ' || rule_id || ' ' || occurrence || ' ' || state || ' ' || coalesce(state_why, '') || ' '
                          || site_id || ' ' || opens_on || ' ' || due_on || ' ' || version || ' #' || id
                        from task order by unit_id, rule_id nulls first, occurrence""").query(String.class).list();
    }

    private static List<String> withoutIds(List<String> rows) {
        return rows.stream().map(row -> row.replaceAll(" #\\d+", "")).toList();
    }
}
