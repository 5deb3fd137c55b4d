package freshet.example;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.TestClock;
import freshet.board.Board;
import freshet.care.Care;
import freshet.care.CareYard;
import freshet.care.SignOff;
import freshet.care.Task;
import freshet.care.Worksheet;
import freshet.checklists.Checklists;
import freshet.happenings.HappeningDraft;
import freshet.happenings.HappeningKind;
import freshet.happenings.Happenings;
import freshet.people.People;
import freshet.people.Person;
import freshet.places.Places;
import freshet.places.Position;
import freshet.places.Site;
import freshet.pumps.PumpKind;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import freshet.pumps.Whereabouts;
import freshet.readings.MeterKind;
import freshet.readings.MeterLog;
import freshet.readings.ReadingDraft;
import freshet.readings.Readings;
import freshet.rules.Applies;
import freshet.rules.CareRule;
import freshet.rules.CareRules;
import freshet.rules.RuleDraft;
import freshet.rules.Scope;
import freshet.rules.Trigger;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.MonthDay;
import java.time.Period;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.config.AutowireCapableBeanFactory;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * A year of the example yard, day by day from opening to closing: work is done early, late or not at all, storms come twice, pumps go
 * out and come back, move, run, stand still and are laid up. Each day the open work is compared with what a slow and simple oracle
 * says of the same day.
 */
@FreshetTest
class SimulatedYearTests {

    private static final LocalDate FIRST = LocalDate.of(2027, 1, 2);
    private static final int DAYS = 365;

    @Autowired
    AutowireCapableBeanFactory beans;

    @Autowired
    People people;

    @Autowired
    Pumps pumps;

    @Autowired
    Places places;

    @Autowired
    Readings readings;

    @Autowired
    Happenings happenings;

    @Autowired
    CareRules rules;

    @Autowired
    Checklists checklists;

    @Autowired
    Care care;

    @Autowired
    Board board;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TestClock clock;

    private final Random random = new Random(20_270_102);
    private Person ilse;
    private List<Long> units;
    private List<Site> sites;
    private Set<Long> siteIds;

    @Test
    void plansEachDayWhatTheOracleSays() {
        clock.set("2027-01-01T15:00:00Z");
        beans.createBean(Example.class).setUp();
        Person owner = people.personNamed("ilse").orElseThrow();
        people.changePerson(
                owner.id(),
                owner.version(),
                owner.fullName(),
                owner.role(),
                Set.of(freshet.people.Competence.values()),
                true,
                null,
                owner);
        ilse = people.person(owner.id());
        keepEveryThird(pumps.activeUnitIds());
        units = pumps.activeUnitIds();
        sites = places.sites();
        siteIds = sites.stream().map(Site::id).collect(Collectors.toSet());
        wakeAllRules();
        addRules();
        YearOracle oracle = new YearOracle(places, pumps, readings, rules, jdbc);
        Set<String> judged = rules.active().stream()
                .filter(YearOracle::judges)
                .map(CareRule::code)
                .collect(Collectors.toSet());
        int compared = 0;
        for (int day = 0; day < DAYS; day++) {
            Instant now = FIRST.plusDays(day)
                    .atTime(15, 0)
                    .atOffset(java.time.ZoneOffset.UTC)
                    .toInstant();
            clock.set(now.toString());
            live(FIRST.plusDays(day), now);
            board.plan();
            Set<String> planned = planned(judged);
            Set<String> said = oracle.open(now);
            assertThat(differences(planned, said))
                    .as("on " + FIRST.plusDays(day))
                    .isEmpty();
            compared += said.size();
        }
        assertThat(compared).as("tasks compared").isGreaterThan(20_000);
    }

    private static Set<String> differences(Set<String> planned, Set<String> said) {
        Set<String> differences = new TreeSet<>();
        planned.stream()
                .filter(each -> !said.contains(each))
                .forEach(each -> differences.add(each + ", by the planner only"));
        said.stream()
                .filter(each -> !planned.contains(each))
                .forEach(each -> differences.add(each + ", by the oracle only"));
        return differences;
    }

    private Set<String> planned(Set<String> judged) {
        return jdbc
                .sql("""
                        select u.tag, r.code, t.occurrence, t.opens_on, t.due_on, t.predicted
                        from task t join pump_unit u on u.id = t.unit_id join care_rule r on r.id = t.rule_id
                        where t.state = 'OPEN' and t.started_at is null""")
                .query((row, n) -> Map.entry(
                        row.getString("code"),
                        YearOracle.line(
                                row.getString("tag"),
                                row.getString("code"),
                                row.getString("occurrence"),
                                row.getObject("opens_on", LocalDate.class),
                                row.getObject("due_on", LocalDate.class),
                                row.getBoolean("predicted"))))
                .list()
                .stream()
                .filter(each -> judged.contains(each.getKey()))
                .map(Map.Entry::getValue)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    /** A third of the yard, pumps of every kind, tells as much in a third of the time. */
    private void keepEveryThird(List<Long> all) {
        for (int at = 0; at < all.size(); at++) {
            if (at % 3 != 0) {
                Unit unit = pumps.unit(all.get(at));
                pumps.retire(unit.id(), unit.version(), LocalDate.of(2027, 1, 1), "sold", ilse);
            }
        }
        assertThat(pumps.units(pumps.activeUnitIds()))
                .extracting(unit -> unit.model().kind())
                .contains(PumpKind.values());
    }

    /** All that ship with the product, the resting ones too. */
    private void wakeAllRules() {
        rules.rules().stream()
                .filter(rule -> !rule.active())
                .forEach(rule -> rules.wake(rule.id(), rule.version(), ilse));
    }

    /** What no default has: fixed days, a stretch of access, once a season, one pump's own interval, starts. */
    private void addRules() {
        Site first = sites.get(0);
        add(
                "legal-look",
                new Scope.AtSite(first.id()),
                List.of(new Trigger.Calendar(Period.ofMonths(3))),
                true,
                null,
                false);
        add(
                "garden-look",
                new Scope.OfKind(PumpKind.UTILITY_SUBMERSIBLE),
                List.of(new Trigger.Calendar(Period.ofMonths(2))),
                false,
                MonthDay.of(4, 1),
                false);
        add(
                "season-look",
                new Scope.OfKind(PumpKind.SUMP_WITH_FLOAT),
                List.of(new Trigger.Calendar(Period.ofWeeks(9)), new Trigger.Event(HappeningKind.STORM, false, 3)),
                false,
                null,
                true);
        add(
                "starts-look",
                new Scope.Every(),
                List.of(new Trigger.Starts(BigDecimal.valueOf(400), BigDecimal.valueOf(100)), new Trigger.Relocated(5)),
                false,
                null,
                false);
        add(
                "starts-look",
                new Scope.OfUnit(units.get(3)),
                List.of(new Trigger.RunHours(BigDecimal.valueOf(40), null), new Trigger.Idle(30, 10)),
                false,
                null,
                false);
    }

    private void add(
            String job,
            Scope scope,
            List<Trigger> triggers,
            boolean fixed,
            MonthDay accessFrom,
            boolean oncePerSeason) {
        long checklist = checklists.checklists().stream()
                .filter(each -> each.code().equals("flow-test-due"))
                .findFirst()
                .orElseThrow()
                .id();
        rules.add(
                new RuleDraft(
                        job,
                        "A look",
                        scope,
                        triggers,
                        checklist,
                        fixed,
                        false,
                        10,
                        3,
                        accessFrom,
                        accessFrom == null ? null : MonthDay.of(10, 31),
                        oncePerSeason,
                        Applies.ALWAYS,
                        Set.of(),
                        "common practice, no source"),
                ilse);
    }

    /** What one day brings. */
    private void live(LocalDate day, Instant now) {
        if (day.getDayOfWeek().getValue() == 1) {
            units.forEach(id -> readMeters(id, now));
        }
        if (random.nextInt(12) == 0) {
            Site site = sites.get(random.nextInt(sites.size()));
            report(HappeningDraft.atSite(
                    pick(HappeningKind.STORM, HappeningKind.POWER_FAILURE),
                    now.minus(3, ChronoUnit.HOURS),
                    site.id(),
                    null));
            if (random.nextBoolean()) {
                report(HappeningDraft.atSite(HappeningKind.STORM, now.minus(1, ChronoUnit.HOURS), site.id(), "again"));
            }
        }
        if (random.nextInt(9) == 0) {
            HappeningKind kind = pick(
                    HappeningKind.DRY_RUN, HappeningKind.FOUL_USE, HappeningKind.SALT_USE, HappeningKind.HIGH_WATER);
            report(HappeningDraft.toUnit(kind, now.minus(2, ChronoUnit.HOURS), anyUnit(), null));
        }
        if (random.nextInt(5) == 0) {
            hire(anyUnit(), now, day);
        }
        if (random.nextInt(30) == 0) {
            move(anyUnit(), now);
        }
        work(now);
    }

    private long anyUnit() {
        return units.get(random.nextInt(units.size()));
    }

    private HappeningKind pick(HappeningKind... kinds) {
        return kinds[random.nextInt(kinds.length)];
    }

    private void report(HappeningDraft draft) {
        happenings.report(draft, ilse);
    }

    private void hire(long unitId, Instant now, LocalDate day) {
        boolean out = happenings.out(List.of(unitId)).containsKey(unitId);
        report(
                out
                        ? HappeningDraft.toUnit(HappeningKind.HIRE_RETURN, now, unitId, null)
                        : HappeningDraft.hireOut(now, unitId, day.plusDays(10)));
    }

    private void move(long unitId, Instant now) {
        Unit unit = pumps.unit(unitId);
        Site to = sites.get(random.nextInt(sites.size()));
        if (to.id() != unit.stand().siteId()) {
            List<Position> positions = places.positions(to.id());
            Long position = positions.isEmpty()
                    ? null
                    : positions.get(random.nextInt(positions.size())).id();
            pumps.move(unitId, new Whereabouts(to.id(), position, null), now, null, ilse);
        }
    }

    private void readMeters(long unitId, Instant now) {
        for (MeterKind kind : MeterKind.values()) {
            MeterLog log = readings.log(unitId, kind);
            if (log.last() == null || random.nextInt(4) == 0) {
                continue;
            }
            BigDecimal rise = BigDecimal.valueOf(random.nextInt(kind == MeterKind.STARTS ? 90 : 25));
            if (random.nextInt(40) == 0) {
                readings.swapMeter(unitId, kind, now, log.last().value().add(rise), BigDecimal.ZERO, null, null, ilse);
            } else {
                readings.recordReading(
                        ReadingDraft.of(unitId, kind, now, log.last().value().add(rise)), ilse);
            }
        }
    }

    /** Somebody does some of what is open, a few things early, most in their time, some late, some never. */
    private void work(Instant now) {
        List<Task> ripe = care.openTasksAt(siteIds).stream()
                .filter(task -> !LocalDate.ofInstant(now, task.zone()).isBefore(task.opensOn()))
                .toList();
        for (Task task : ripe) {
            if (task.id() % 11 != 0 && random.nextInt(8) == 0) {
                Worksheet sheet = care.worksheet(task.id());
                // what was signed just before may have contained it
                if (sheet.task().open()) {
                    care.sign(task.id(), SignOff.of(sheet.task().version(), CareYard.allPass(sheet, ilse)), ilse);
                }
            }
        }
    }
}
