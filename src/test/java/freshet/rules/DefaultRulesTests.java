package freshet.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import freshet.FreshetTest;
import freshet.checklists.Checklist;
import freshet.checklists.Checklists;
import freshet.happenings.HappeningKind;
import freshet.places.WindowKind;
import freshet.pumps.PumpKind;
import java.math.BigDecimal;
import java.time.Period;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;

/** What the rules that an install begins with cover, and what none of them may lack. */
@FreshetTest
class DefaultRulesTests {

    private static final Set<PumpKind> IN_PITS =
            Set.of(PumpKind.SUMP_WITH_FLOAT, PumpKind.SEWAGE, PumpKind.BATTERY_BACKUP);

    @Autowired
    CareRules rules;

    @Autowired
    RuleChecks checks;

    @Autowired
    Checklists checklists;

    @Autowired
    JdbcClient jdbc;

    /** What holds, or would hold once woken, for a pump of this kind. */
    private Map<String, List<CareRule>> byJob(PumpKind kind) {
        return rules.rules().stream()
                .filter(rule ->
                        rule.scope() instanceof Scope.Every || rule.scope().equals(new Scope.OfKind(kind)))
                .collect(Collectors.groupingBy(CareRule::job));
    }

    private static Predicate<CareRule> dueBy(Trigger... triggers) {
        return rule -> rule.triggers().containsAll(Arrays.asList(triggers));
    }

    private static Trigger after(HappeningKind kind, int days) {
        return new Trigger.Event(kind, false, days);
    }

    @Test
    void coverEveryKindThroughTheYearAndAfterWhatHappens() {
        for (PumpKind kind : PumpKind.values()) {
            Map<String, List<CareRule>> jobs = byJob(kind);
            assertThat(jobs)
                    .as("%s", kind)
                    .containsKeys(
                            "opening",
                            "closing",
                            "electrical",
                            "capacity",
                            "flow-test",
                            "after-hire",
                            "after-storm",
                            "after-repair",
                            "after-dry-run");
            assertThat(jobs.get("opening")).allMatch(dueBy(new Trigger.Season(WindowKind.OPENING)));
            assertThat(jobs.get("closing")).allMatch(dueBy(new Trigger.Season(WindowKind.CLOSING)));
            assertThat(jobs.get("after-hire")).allMatch(dueBy(after(HappeningKind.HIRE_RETURN, 1)));
            assertThat(jobs.get("after-storm")).allMatch(dueBy(after(HappeningKind.STORM, 2)));
            assertThat(jobs.get("after-repair")).allMatch(dueBy(after(HappeningKind.REPAIRED, 1)));
            assertThat(jobs.get("after-dry-run")).allMatch(dueBy(after(HappeningKind.DRY_RUN, 1)));
            assertThat(jobs.get("capacity")).allMatch(dueBy(new Trigger.Condition(Measure.CAPACITY, 0.8, 14)));
        }
        for (PumpKind kind : IN_PITS) {
            Map<String, List<CareRule>> jobs = byJob(kind);
            assertThat(jobs.get("monthly"))
                    .as("%s", kind)
                    .hasSize(1)
                    .allMatch(rule -> rule.active() && rule.followsPosition())
                    .allMatch(dueBy(new Trigger.Calendar(Period.ofMonths(1))));
            assertThat(jobs.get("after-storm"))
                    .allMatch(dueBy(after(HappeningKind.POWER_FAILURE, 2), after(HappeningKind.HIGH_WATER, 1)));
            assertThat(jobs.get("after-moving")).allMatch(dueBy(new Trigger.Relocated(3)));
        }
    }

    @Test
    void serveEachKindByItsHoursStartsAndMonths() {
        Map<String, List<CareRule>> engine = byJob(PumpKind.ENGINE_TRASH);
        assertThat(engine.get("engine-oil")).singleElement().satisfies(rule -> {
            assertThat(rule.triggers())
                    .containsExactly(
                            new Trigger.RunHours(BigDecimal.valueOf(100), BigDecimal.valueOf(20)),
                            new Trigger.Calendar(Period.ofMonths(6)));
            assertThat(rule.fixed()).isFalse();
        });
        assertThat(engine).containsKeys("air-filter", "spark-plug", "fuel-system", "valves", "wash", "idle");
        Map<String, List<CareRule>> submersible = byJob(PumpKind.UTILITY_SUBMERSIBLE);
        assertThat(submersible)
                .containsKeys("oil-look", "inside-look", "seal-oil", "overhaul", "wash", "idle", "storage-turn");
        assertThat(submersible.get("storage-turn")).allMatch(rule -> rule.applies() == Applies.LAID_UP);
        assertThat(submersible.get("electrical"))
                .allMatch(CareRule::fixed)
                .extracting(rule -> rule.triggers().get(0))
                .containsExactlyInAnyOrder(
                        new Trigger.Calendar(Period.ofMonths(12)), new Trigger.Calendar(Period.ofMonths(3)));
        assertThat(byJob(PumpKind.SUMP_WITH_FLOAT)).containsKeys("weekly", "wet-ground", "float-switch", "cycling");
        assertThat(byJob(PumpKind.SEWAGE).get("pair-balance"))
                .allMatch(dueBy(new Trigger.Condition(Measure.HOURS_APART, 0.1, 14)));
        assertThat(byJob(PumpKind.BATTERY_BACKUP)).containsKeys("battery");
        assertThat(byJob(PumpKind.CIRCULATOR)).containsKeys("seal-and-grease", "monthly", "cycling");
    }

    /** A keeper is not flooded: what comes by hours or starts, and what only some keepers do, waits to be woken. */
    @Test
    void wakeWithSafetySeasonsProofsAndWhatFollowsAnEvent() {
        assertThat(rules.active())
                .extracting(CareRule::job)
                .containsOnly(
                        "opening",
                        "closing",
                        "monthly",
                        "electrical",
                        "capacity",
                        "cycling",
                        "pair-balance",
                        "after-hire",
                        "after-storm",
                        "after-repair",
                        "after-dry-run",
                        "after-moving",
                        "wash");
        assertThat(rules.active())
                .filteredOn(rule -> rule.job().equals("monthly"))
                .extracting(CareRule::scope)
                .containsExactlyInAnyOrderElementsOf(
                        IN_PITS.stream().map(Scope.OfKind::new).toList());
        for (PumpKind kind : PumpKind.values()) {
            assertThat(new Nearest(rules.rules()).of(1, 1L, 1, 1, kind))
                    .as("%s", kind)
                    .allMatch(applied -> applied.overruled().isEmpty());
        }
    }

    @Test
    void nameASourceAndAChecklistThatFitsAndPassTheChecksOfTheDoor() {
        assertThat(rules.rules()).hasSize(DefaultRules.all().size()).allSatisfy(rule -> {
            assertThat(rule.source()).as(rule.code()).isNotBlank();
            assertThatCode(() -> checks.passed(RuleDraft.of(rule)))
                    .as(rule.code())
                    .doesNotThrowAnyException();
        });
    }

    @Test
    void containOnlyWorkThatTheirChecklistDoes() {
        Map<Long, Checklist> byId =
                checklists.checklists().stream().collect(Collectors.toMap(Checklist::id, each -> each));
        for (CareRule rule : rules.rules()) {
            Set<String> jobs = rule.scope() instanceof Scope.OfKind kind
                    ? byJob(kind.kind()).keySet()
                    : rules.rules().stream().map(CareRule::job).collect(Collectors.toSet());
            assertThat(jobs).as(rule.code()).containsAll(rule.covers());
            if (rule.covers().contains("electrical")) {
                assertThat(byId.get(rule.checklistId()).lines())
                        .as(rule.code())
                        .anyMatch(line -> "MΩ".equals(line.unit()));
            }
            if (rule.covers().contains("oil-look")) {
                assertThat(byId.get(rule.checklistId()).lines())
                        .as(rule.code())
                        .anyMatch(line -> line.question().startsWith("Color of the oil"));
            }
        }
    }

    @Test
    void areAddedOnceByNodesThatStartTogether() throws Exception {
        int all = rules.rules().size();
        jdbc.sql("update care_rule set code = 'old-' || code").update();
        ExecutorService nodes = Executors.newFixedThreadPool(4);
        try {
            Callable<Void> start = () -> {
                rules.installDefaults();
                return null;
            };
            for (Future<Void> started : nodes.invokeAll(List.of(start, start, start, start))) {
                started.get();
            }
        } finally {
            nodes.shutdownNow();
        }
        assertThat(rules.rules())
                .hasSize(2 * all)
                .allMatch(rule -> !rule.triggers().isEmpty());
    }
}
