package freshet.board;

import freshet.FreshetTest;
import freshet.TestClock;
import freshet.care.CareYard;
import freshet.fleet.Fleet;
import freshet.people.Person;
import freshet.places.Places;
import freshet.places.Site;
import freshet.places.Span;
import freshet.places.Window;
import freshet.pumps.PumpKind;
import freshet.pumps.Pumps;
import freshet.pumps.UnitArrival;
import freshet.pumps.UnitDraft;
import freshet.pumps.Whereabouts;
import java.sql.Types;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.TestContextManager;
import org.springframework.transaction.support.TransactionOperations;

/**
 * Planning 10,000 pumps at 40 sites in two time zones on a real PostgreSQL, in microseconds for each pump: our own statements over all
 * pumps at once, and a plain planner that goes from pump to pump and puts in row by row; both for an empty board (40,000 tasks) and for
 * one on which nothing is missing. Then whole runs of the clock. Before it measures, it compares what the two planners planned.
 *
 * <p>{@code mvn -Pbench test-compile exec:exec -Dexec.args="-cp %classpath org.openjdk.jmh.Main PlanningBench"}; read it as ratios,
 * {@code rowByRow…} over {@code atOnce…}.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@OperationsPerInvocation(PlanningBench.UNITS)
@Fork(1)
@Warmup(iterations = 2)
@Measurement(iterations = 5)
public class PlanningBench {

    static final int UNITS = 10_000;

    private static final int SITES = 40;
    private static final ZoneId AUCKLAND = ZoneId.of("Pacific/Auckland");
    private static final String TASKS = """
            select md5(string_agg(concat_ws(' ', unit_id, rule_id, occurrence, site_id, checklist_id, title, opens_on, due_on, minutes, state),
                                  ';' order by unit_id, rule_id, occurrence))
            from task""";

    private final House house = new House();

    /** The product as its tests know it. */
    @FreshetTest
    static class House {

        @Autowired
        Board board;

        @Autowired
        Planner planner;

        @Autowired
        Fleet fleet;

        @Autowired
        Places places;

        @Autowired
        Pumps pumps;

        @Autowired
        CareYard yard;

        @Autowired
        JdbcClient database;

        @Autowired
        TransactionOperations transactions;

        @Autowired
        Clock clock;

        @Autowired
        TestClock testClock;

        @Autowired
        ConfigurableApplicationContext context;
    }

    /** Nothing is missing on the board. */
    @State(Scope.Benchmark)
    public static class Planned {

        @Setup(Level.Iteration)
        public void plan(PlanningBench bench) {
            bench.house.board.plan();
        }
    }

    /** Nothing is on the board. */
    @State(Scope.Benchmark)
    public static class Empty {

        @Setup(Level.Iteration)
        public void clear(PlanningBench bench) {
            bench.clear();
        }
    }

    @Setup(Level.Trial)
    public void tenThousandPumps() throws Exception {
        new TestContextManager(House.class).prepareTestInstance(house);
        house.testClock.set("2027-05-17T09:00:00Z");
        Person ilse = house.yard.ilse();
        List<Site> sites = new ArrayList<>();
        for (int i = 0; i < SITES; i++) {
            sites.add(house.yard.site(
                    "Site " + i,
                    i % 2 == 0 ? CareYard.CHICAGO : AUCKLAND,
                    CareYard.opening("Opening", 2, 1 + i % 20, 3, 20),
                    CareYard.closing("Closing", 10, 1 + i % 20, 11, 15)));
        }
        long model = house.yard.model(PumpKind.UTILITY_SUBMERSIBLE);
        List<UnitArrival> arrivals = new ArrayList<>();
        for (int i = 0; i < UNITS; i++) {
            arrivals.add(new UnitArrival(
                    new UnitDraft("T-" + i, null, model, null, CareYard.LONG_AGO, null),
                    Whereabouts.at(sites.get(i % SITES).id())));
        }
        house.pumps.takeInUnits(arrivals, ilse);
        house.database.sql("vacuum analyze").update();
        compare();
    }

    @TearDown(Level.Trial)
    public void stop() {
        house.context.close();
    }

    private void compare() {
        clear();
        house.transactions.executeWithoutResult(all -> house.planner.plan(null));
        String atOnce = house.database.sql(TASKS).query(String.class).single();
        clear();
        house.transactions.executeWithoutResult(all -> rowByRow());
        if (!atOnce.equals(house.database.sql(TASKS).query(String.class).single())) {
            throw new IllegalStateException("the two planners planned different tasks");
        }
    }

    private void clear() {
        house.database.sql("truncate task cascade").update();
    }

    /** One statement for each task; withdrawing, which it leaves out, would cost it more. */
    private void rowByRow() {
        Map<Long, Site> sites = house.places.sites().stream().collect(Collectors.toMap(Site::id, site -> site));
        List<Rule> rules = house.database.sql("""
                        select r.id, r.name, g.window_kind as trigger_kind, r.pump_kind, c.id as checklist_id, c.minutes
                        from care_rule r join care_trigger g on g.rule_id = r.id and g.kind = 'SEASON'
                        join checklist c on c.id = r.checklist_id where r.active""").query(Rule.class).list();
        for (Standing unit : house.database.sql("""
                        select u.id, m.kind, u.in_care_from, s.site_id, s.position_id from pump_unit u
                        join pump_model m on m.id = u.model_id join stand s on s.unit_id = u.id and s.until is null
                        where u.retired_on is null""").query(Standing.class).list()) {
            Site site = sites.get(unit.siteId());
            for (Window window : site.windows()) {
                for (Span span : SiteDays.due(window, site.today(house.clock))) {
                    rules.stream()
                            .filter(rule -> rule.triggerKind().equals(window.kind().name())
                                    && unit.kind().equals(rule.pumpKind())
                                    && !span.dueOn().isBefore(unit.inCareFrom()))
                            .forEach(rule -> put(unit, rule, span));
                }
            }
        }
    }

    record Rule(long id, String name, String triggerKind, String pumpKind, long checklistId, int minutes) {}

    record Standing(long id, String kind, LocalDate inCareFrom, long siteId, Long positionId) {}

    private void put(Standing unit, Rule rule, Span span) {
        house.database.sql("""
                        insert into task (rule_id, unit_id, occurrence, site_id, position_id, checklist_id, title, why, opens_on, due_on,
                                          minutes, state, planned_at)
                        select :rule, :unit, :occurrence, :site, :position, :checklist, :title, :why, :opens, :due, :minutes, 'OPEN', :now
                        where not exists (select 1 from task where unit_id = :unit and rule_id = :rule and state = 'SIGNED'
                                            and opens_on <= :due and due_on >= :opens)
                        on conflict (unit_id, rule_id, occurrence) do nothing""")
                .param("rule", rule.id())
                .param("unit", unit.id())
                .param("occurrence", SiteDays.occurrence(span))
                .param("site", unit.siteId())
                .param("position", unit.positionId(), Types.BIGINT)
                .param("checklist", rule.checklistId())
                .param("title", rule.name() + " " + span.label())
                .param("why", span.window().name())
                .param("opens", span.opensOn())
                .param("due", span.dueOn())
                .param("minutes", rule.minutes())
                .param("now", house.clock.instant().atOffset(ZoneOffset.UTC))
                .update();
    }

    @Benchmark
    public void atOnceFromNothing(Empty empty) {
        house.transactions.executeWithoutResult(all -> house.planner.plan(null));
    }

    @Benchmark
    public void rowByRowFromNothing(Empty empty) {
        house.transactions.executeWithoutResult(all -> rowByRow());
    }

    @Benchmark
    public void atOnceNothingMissing(Planned planned) {
        house.transactions.executeWithoutResult(all -> house.planner.plan(null));
    }

    @Benchmark
    public void rowByRowNothingMissing(Planned planned) {
        house.transactions.executeWithoutResult(all -> rowByRow());
    }

    /** The catch-up of a start: planning, flow tests, and the readiness of every pump. */
    @Benchmark
    public void runOfAStart(Planned planned) {
        house.board.plan();
    }

    /** The turn of the day in both zones. */
    @Benchmark
    public void runOfADay(Planned planned) {
        house.fleet.turnDay(CareYard.CHICAGO);
        house.fleet.turnDay(AUCKLAND);
    }
}
