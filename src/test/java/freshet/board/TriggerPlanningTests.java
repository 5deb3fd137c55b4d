package freshet.board;

import static freshet.care.CareYard.allPass;
import static org.assertj.core.api.Assertions.assertThat;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import freshet.FreshetTest;
import freshet.TestClock;
import freshet.care.Care;
import freshet.care.CareYard;
import freshet.care.SignOff;
import freshet.care.Task;
import freshet.checklists.Checklist;
import freshet.checklists.Checklists;
import freshet.happenings.HappeningDraft;
import freshet.happenings.HappeningKind;
import freshet.happenings.Happenings;
import freshet.measures.Show;
import freshet.measures.UnitSystem;
import freshet.people.Person;
import freshet.places.Places;
import freshet.places.PositionDraft;
import freshet.places.PositionKind;
import freshet.pumps.PumpKind;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import freshet.pumps.Whereabouts;
import freshet.readings.MeterKind;
import freshet.readings.ReadingDraft;
import freshet.readings.Readings;
import freshet.rules.Applies;
import freshet.rules.CareRules;
import freshet.rules.Measure;
import freshet.rules.RuleDraft;
import freshet.rules.Scope;
import freshet.rules.Trigger;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.Period;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.MessageSource;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Rules with every trigger, from what people do and report to the tasks on the board. */
@FreshetTest
class TriggerPlanningTests {

    @Autowired
    Board board;

    @Autowired
    CareRules rules;

    @Autowired
    Checklists checklists;

    @Autowired
    Care care;

    @Autowired
    Happenings happenings;

    @Autowired
    Readings readings;

    @Autowired
    Places places;

    @Autowired
    Pumps pumps;

    @Autowired
    CareYard yard;

    @Autowired
    TestClock clock;

    @Autowired
    MessageSource messages;

    @Autowired
    JdbcClient database;

    Person ilse;
    Unit unit;

    @BeforeEach
    void aPumpInTheYard() {
        clock.set("2026-06-01T12:00:00Z");
        ilse = yard.freya();
        unit = yard.unit(
                "BF-01", PumpKind.UTILITY_SUBMERSIBLE, yard.brackenfold().id(), LocalDate.of(2026, 6, 1));
    }

    private RuleDraft draft(String job, Scope scope, int grace, boolean follows, Trigger... triggers) {
        long electrical = checklists.checklists().stream()
                .filter(checklist -> checklist.code().equals("electrical-test"))
                .mapToLong(Checklist::id)
                .findFirst()
                .orElseThrow();
        return new RuleDraft(
                job,
                "Work of " + job,
                scope,
                List.of(triggers),
                electrical,
                false,
                follows,
                5,
                grace,
                null,
                null,
                false,
                Applies.ALWAYS,
                Set.of(),
                null);
    }

    private void add(String job, Trigger... triggers) {
        rules.add(draft(job, new Scope.OfUnit(unit.id()), 0, false, triggers), ilse);
    }

    /** "2026-07-01 OPEN" of the work of a job. */
    private List<String> plan(Unit of, String job) {
        return tasks(of, job)
                .map(task -> task.dueOn() + " " + (task.open() ? "OPEN" : task.state() + why(task)))
                .toList();
    }

    private static String why(Task task) {
        return task.stateWhy() == null ? "" : " " + task.stateWhy();
    }

    private Stream<Task> tasks(Unit of, String job) {
        return care.tasksOf(of.id()).stream().filter(task -> task.title().equals("Work of " + job));
    }

    private void sign(Task task) {
        care.sign(task.id(), SignOff.of(task.version(), allPass(care.worksheet(task.id()), ilse)), ilse);
    }

    private Task open(Unit of, String job) {
        return tasks(of, job).filter(Task::open).findFirst().orElseThrow();
    }

    private void read(String day, String hours) {
        readings.recordReading(
                ReadingDraft.of(
                        unit.id(), MeterKind.RUN_HOURS, Instant.parse(day + "T12:00:00Z"), new BigDecimal(hours)),
                ilse);
    }

    private String words(Task task) {
        Show show = new Show(UnitSystem.SI, Locale.ENGLISH, task.dueOn());
        return messages.getMessage(task.why().code(), task.why().arguments(show), Locale.ENGLISH);
    }

    @Test
    void plansAnewWithEachSignatureAndCallsLateOnlyWhatIsBeyondItsGrace() {
        rules.add(
                draft("check", new Scope.OfUnit(unit.id()), 3, false, new Trigger.Calendar(Period.ofMonths(1))), ilse);
        assertThat(plan(unit, "check")).containsExactly("2026-07-01 OPEN");
        assertThat(words(open(unit, "check"))).isEqualTo("Every month, never done since 1 Jun");
        clock.set("2026-07-04T12:00:00Z");
        assertThat(lateOnTheBoard()).isZero();
        clock.set("2026-07-05T12:00:00Z");
        assertThat(lateOnTheBoard()).isOne();
        sign(open(unit, "check"));
        assertThat(plan(unit, "check")).containsExactly("2026-07-01 SIGNED", "2026-08-05 OPEN");
        assertThat(words(open(unit, "check"))).isEqualTo("Every month, last done 5 Jul");
        assertThat(lateOnTheBoard()).isZero();
    }

    private int lateOnTheBoard() {
        return board.sites(0, 5).stream().mapToInt(BoardSite::late).sum();
    }

    /** 10 starts an hour for small motors: common practice, no source. */
    @Test
    void asksOnceForAPumpThatStartsTooOftenAndAgainOnlyAfterItWasFoundWhy() {
        add("cycling", new Trigger.Condition(Measure.STARTS_PER_HOUR, 10, 7));
        clock.set("2026-06-20T15:00:00Z");
        starts("2026-06-10", "1000");
        starts("2026-06-11", "1240");
        assertThat(plan(unit, "cycling")).as("10 an hour is not beyond 10").isEmpty();
        starts("2026-06-12", "1504");
        assertThat(plan(unit, "cycling")).containsExactly("2026-06-19 OPEN");
        starts("2026-06-13", "1792");
        assertThat(plan(unit, "cycling")).as("one episode").containsExactly("2026-06-19 OPEN");
        sign(open(unit, "cycling"));
        assertThat(plan(unit, "cycling")).containsExactly("2026-06-19 SIGNED");
        clock.set("2026-06-22T15:00:00Z");
        starts("2026-06-21", "1800");
        starts("2026-06-22", "2100");
        assertThat(plan(unit, "cycling")).containsExactly("2026-06-19 SIGNED", "2026-06-29 OPEN");
    }

    private void starts(String day, String count) {
        readings.recordReading(
                ReadingDraft.of(unit.id(), MeterKind.STARTS, Instant.parse(day + "T12:00:00Z"), new BigDecimal(count)),
                ilse);
    }

    @Test
    void foretellsRunHoursWithEachReadingAndRestsInStorage() {
        add("oil", new Trigger.RunHours(new BigDecimal("100"), null));
        clock.set("2026-07-20T15:00:00Z");
        read("2026-06-01", "10");
        assertThat(plan(unit, "oil")).isEmpty();
        read("2026-07-01", "70");
        assertThat(plan(unit, "oil")).containsExactly("2026-07-21 OPEN");
        assertThat(open(unit, "oil").predicted()).isTrue();
        assertThat(words(open(unit, "oil"))).isEqualTo("60 of 100 run hours by the reading of 1 Jul");
        long task = open(unit, "oil").id();
        readings.swapMeter(
                unit.id(),
                MeterKind.RUN_HOURS,
                Instant.parse("2026-07-02T12:00:00Z"),
                new BigDecimal("72"),
                new BigDecimal("500"),
                null,
                null,
                ilse);
        read("2026-07-11", "538");
        assertThat(plan(unit, "oil")).containsExactly("2026-07-11 OPEN");
        assertThat(open(unit, "oil").predicted()).isFalse();
        assertThat(open(unit, "oil").id()).isEqualTo(task);

        clock.set("2026-10-05T15:00:00Z");
        board.plan();
        Task closing = care.tasksOf(unit.id()).stream()
                .filter(each -> each.title().equals("Closing 2026"))
                .findFirst()
                .orElseThrow();
        sign(closing);
        assertThat(plan(unit, "oil")).containsExactly("2026-07-11 WITHDRAWN STORED");
        clock.set("2027-02-20T15:00:00Z");
        board.plan();
        Task opening = care.tasksOf(unit.id()).stream()
                .filter(each -> each.title().equals("Opening 2027"))
                .findFirst()
                .orElseThrow();
        sign(opening);
        assertThat(plan(unit, "oil")).containsExactly("2026-07-11 OPEN");
    }

    @Test
    void makesOneTaskOfTwoStormsAndNoneOfReportsThatWereTakenBack() {
        add("look", new Trigger.Event(HappeningKind.STORM, false, 2));
        long site = yard.brackenfold().id();
        clock.set("2026-06-10T12:00:00Z");
        long first = storm(site, "2026-06-08T12:00:00Z");
        long second = storm(site, "2026-06-09T12:00:00Z");
        assertThat(plan(unit, "look")).containsExactly("2026-06-10 OPEN");
        happenings.withdraw(first, "It passed by", ilse);
        assertThat(plan(unit, "look")).containsExactlyInAnyOrder("2026-06-10 WITHDRAWN OVERTAKEN", "2026-06-11 OPEN");
        happenings.withdraw(second, "It passed by", ilse);
        assertThat(plan(unit, "look")).allMatch(line -> line.contains("WITHDRAWN"));

        storm(site, "2026-06-10T11:00:00Z");
        sign(open(unit, "look"));
        assertThat(tasks(unit, "look").noneMatch(Task::open)).isTrue();
        // a pump that came after the storm was not touched by it
        clock.set("2026-06-11T12:00:00Z");
        Unit later = yard.unit("BF-02");
        assertThat(tasks(later, "look")).isEmpty();
    }

    private long storm(long site, String at) {
        return happenings.report(HappeningDraft.atSite(HappeningKind.STORM, Instant.parse(at), site, null), ilse);
    }

    @Test
    void showsWorkOnAPumpThatIsOutOnHireUntilWhen() {
        add("check", new Trigger.Calendar(Period.ofDays(6)));
        clock.set("2026-06-03T12:00:00Z");
        happenings.report(HappeningDraft.hireOut(clock.instant(), unit.id(), LocalDate.of(2026, 6, 20)), ilse);
        board.plan();
        assertThat(board.sites(5, 5).get(0).lines()).singleElement().satisfies(line -> {
            assertThat(line.dueOn()).isEqualTo("2026-06-07");
            assertThat(line.outUntil()).isEqualTo("2026-06-20");
        });
    }

    @Test
    void keepsTheScheduleOfAPositionWhenItsPumpIsReplaced() {
        long site = yard.brackenfold().id();
        long pit = places.addPosition(new PositionDraft(site, "Pit 1", PositionKind.PIT, null), ilse)
                .id();
        rules.add(draft("pit", new Scope.InPosition(pit), 0, true, new Trigger.Calendar(Period.ofMonths(2))), ilse);
        pumps.move(unit.id(), new Whereabouts(site, pit, null), clock.instant(), null, ilse);
        assertThat(plan(unit, "pit")).containsExactly("2026-08-01 OPEN");
        clock.set("2026-07-29T12:00:00Z");
        sign(open(unit, "pit"));
        assertThat(plan(unit, "pit")).containsExactly("2026-08-01 SIGNED", "2026-09-29 OPEN");

        clock.set("2026-08-10T12:00:00Z");
        Unit other = yard.unit("BF-09");
        pumps.move(unit.id(), Whereabouts.at(site), clock.instant(), null, ilse);
        pumps.move(other.id(), new Whereabouts(site, pit, null), clock.instant(), null, ilse);
        assertThat(plan(other, "pit")).containsExactly("2026-09-29 OPEN");
        assertThat(tasks(unit, "pit").noneMatch(Task::open)).isTrue();
    }

    @Test
    void asksAsMuchOfTheDatabaseForManyPumpsAsForFew() {
        database.sql("update care_rule set active = true").update();
        List<Long> many = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            many.add(yard.unit("M-" + i).id());
        }
        database.sql("delete from task").update();
        int few = statements(() -> board.planAfterWork(Set.copyOf(many.subList(0, 3))));
        database.sql("delete from task").update();
        assertThat(statements(() -> board.planAfterWork(Set.copyOf(many))))
                .isPositive()
                .isEqualTo(few);
        assertThat(database.sql("select count(*) from task where state = 'OPEN'")
                        .query(Integer.class)
                        .single())
                .isGreaterThanOrEqualTo(5 * 40);
    }

    private static int statements(Runnable work) {
        Logger jdbc = (Logger) LoggerFactory.getLogger("org.springframework.jdbc.core.JdbcTemplate");
        Logger jpa = (Logger) LoggerFactory.getLogger("org.hibernate.SQL");
        Level before = jdbc.getLevel();
        ListAppender<ILoggingEvent> said = new ListAppender<>();
        said.start();
        for (Logger logger : List.of(jdbc, jpa)) {
            logger.setLevel(Level.DEBUG);
            logger.setAdditive(false);
            logger.addAppender(said);
        }
        try {
            work.run();
        } finally {
            for (Logger logger : List.of(jdbc, jpa)) {
                logger.detachAppender(said);
                logger.setAdditive(true);
                logger.setLevel(before);
            }
        }
        return (int) said.list.stream()
                .filter(event -> !event.getFormattedMessage().contains("SQL update affected"))
                .count();
    }

    @Test
    void mindsNoOrderWithEveryRuleAwake() {
        database.sql("update care_rule set active = true").update();
        List<Unit> units = new ArrayList<>();
        for (PumpKind kind : PumpKind.values()) {
            units.add(yard.unit("K-" + kind.ordinal(), kind, yard.brackenfold().id(), LocalDate.of(2024, 2, 29)));
        }
        storm(yard.brackenfold().id(), "2026-06-01T11:59:00Z");
        for (int step = 0; step < 12; step++) {
            clock.advance(Duration.ofDays(17));
            board.plan();
            Unit worked = units.get(step % units.size());
            LocalDate today = clock.instant().atZone(CareYard.CHICAGO).toLocalDate();
            care.tasksOf(worked.id()).stream()
                    .filter(task -> task.openOn(today))
                    .findFirst()
                    .ifPresent(this::sign);
        }
        List<String> planned = rows();
        board.plan();
        assertThat(rows()).as("planned again").isEqualTo(planned);
        database.sql("delete from task where state <> 'SIGNED'").update();
        units.forEach(each -> board.planUnits(Set.of(each.id())));
        board.planUnits(Set.of(unit.id()));
        assertThat(rows()).as("one by one, from nothing").isEqualTo(planned);
    }

    private List<String> rows() {
        return database.sql("""
                        select concat_ws(' ', unit_id, rule_id, occurrence, title, opens_on, due_on, predicted, why_code, why_args)
                        from task where state = 'OPEN' and rule_id is not null order by unit_id, rule_id, occurrence""").query(String.class).list();
    }
}
