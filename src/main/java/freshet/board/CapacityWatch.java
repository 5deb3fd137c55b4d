package freshet.board;

import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import freshet.readings.Capacity;
import freshet.readings.FlowTestResult;
import freshet.readings.Readings;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Opens one task for a unit whose remaining capacity fell below the rule's threshold: one for each stretch of tests below it, named by
 * the first of them, and none again until a test was back above.
 */
@Component
class CapacityWatch {

    private final JdbcClient jdbc;
    private final Readings readings;
    private final Pumps pumps;
    private final Clock clock;

    CapacityWatch(JdbcClient jdbc, Readings readings, Pumps pumps, Clock clock) {
        this.jdbc = jdbc;
        this.readings = readings;
        this.pumps = pumps;
        this.clock = clock;
    }

    private record Rule(long id, String name, long checklistId, double threshold, int daysToAct) {}

    /** Looks at one unit and says whether its tasks changed. */
    boolean look(long unitId) {
        return rule().map(rule -> look(unitId, rule)).orElse(false);
    }

    /** Looks at all of these units and gives those whose tasks changed. */
    Set<Long> look(List<Long> unitIds) {
        Optional<Rule> rule = rule();
        if (rule.isEmpty()) {
            return Set.of();
        }
        Map<Long, Capacity> capacities = readings.capacities(unitIds);
        List<Long> withTask = jdbc.sql("select unit_id from task where rule_id = ? and state = 'OPEN'")
                .param(rule.get().id())
                .query(Long.class)
                .list();
        return unitIds.stream()
                .filter(id -> withTask.contains(id)
                        || capacities.containsKey(id)
                                && capacities.get(id).fraction() < rule.get().threshold())
                .filter(id -> look(id, rule.get()))
                .collect(Collectors.toSet());
    }

    private Optional<Rule> rule() {
        return jdbc.sql("""
                        select id, name, checklist_id, threshold, days_to_act from care_rule
                        where trigger_kind = 'CAPACITY_BELOW' and active order by id limit 1""")
                .query((row, n) -> new Rule(
                        row.getLong("id"),
                        row.getString("name"),
                        row.getLong("checklist_id"),
                        row.getDouble("threshold"),
                        row.getInt("days_to_act")))
                .optional();
    }

    private boolean look(long unitId, Rule rule) {
        Unit unit = pumps.unit(unitId);
        List<Long> below = testsBelow(unitId, rule.threshold());
        if (below.isEmpty() || unit.retired()) {
            return withdraw(unitId, rule);
        }
        String[] occurrences = below.stream().map(CapacityWatch::occurrence).toArray(String[]::new);
        boolean known = jdbc.sql("""
                        select exists (select 1 from task where unit_id = :unit and rule_id = :rule
                          and (state = 'OPEN' or occurrence = any(:occurrences)))""")
                .param("unit", unitId)
                .param("rule", rule.id())
                .param("occurrences", occurrences)
                .query(Boolean.class)
                .single();
        return !known && open(unit, rule, occurrences[occurrences.length - 1]);
    }

    /** The tests that stand below the threshold since the last at or above it, newest first. */
    private List<Long> testsBelow(long unitId, double threshold) {
        List<Long> below = new ArrayList<>();
        for (FlowTestResult test : readings.flowTests(unitId)) {
            Capacity capacity = test.capacity();
            if (!test.stands() || capacity == null) {
                continue;
            }
            if (capacity.fraction() >= threshold) {
                break;
            }
            below.add(capacity.testId());
        }
        return below;
    }

    private static String occurrence(long testId) {
        return "test:" + testId;
    }

    private boolean open(Unit unit, Rule rule, String occurrence) {
        LocalDate today = LocalDate.ofInstant(clock.instant(), unit.stand().zone());
        return jdbc.sql("""
                        insert into task (rule_id, unit_id, occurrence, site_id, position_id, checklist_id, title, why, opens_on, due_on,
                                          minutes, state, planned_at)
                        select :rule, :unit, :occurrence, :site, :position, c.id, :title, :why, :today, :due, c.minutes, 'OPEN', :now
                        from checklist c where c.id = :checklist
                        on conflict (unit_id, rule_id, occurrence) do nothing""")
                        .param("rule", rule.id())
                        .param("unit", unit.id())
                        .param("occurrence", occurrence)
                        .param("site", unit.stand().siteId())
                        .param("position", unit.stand().positionId())
                        .param("title", rule.name())
                        .param("why", "Flow test below %.0f %% of reference".formatted(rule.threshold() * 100))
                        .param("today", today)
                        .param("due", today.plusDays(rule.daysToAct()))
                        .param("now", clock.instant().atOffset(ZoneOffset.UTC))
                        .param("checklist", rule.checklistId())
                        .update()
                == 1;
    }

    private boolean withdraw(long unitId, Rule rule) {
        return jdbc.sql("""
                        update task set state = 'WITHDRAWN', state_why = 'NO_LONGER_DUE'
                        where unit_id = ? and rule_id = ? and state = 'OPEN' and started_at is null""").params(unitId, rule.id()).update() > 0;
    }
}
