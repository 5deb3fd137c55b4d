package freshet.board;

import freshet.rules.Applied;
import freshet.rules.CareRule;
import freshet.rules.CareRules;
import freshet.rules.Nearest;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/**
 * Makes the open tasks agree with what the rules and the facts of each unit make due. The facts of some thousand units are read at once,
 * what is wanted is worked out in memory, and only what differs is written, in two statements. Saying so twice changes nothing.
 */
@Component
class Planner {

    private static final int UNITS_AT_ONCE = 2_000;
    // planning is done by one at a time, and by nobody while somebody answers or signs; taken before any row is touched
    private static final long PLANNING = 5_318_008_001L;

    private static final String OPEN = """
            insert into task (rule_id, unit_id, occurrence, site_id, position_id, checklist_id, title, why_code, why_args, opens_on,
                              due_on, predicted, grace_days, minutes, state, planned_at)
            select w."ruleId", w."unitId", w.occurrence, w."siteId", w."positionId", c.id, w.title, w."whyCode", w."whyArgs", w."opensOn",
                   w."dueOn", w.predicted, w."graceDays", c.minutes, 'OPEN', :now
            from json_to_recordset(cast(:wanted as json))
              as w("ruleId" bigint, "unitId" bigint, occurrence text, "siteId" bigint, "positionId" bigint, "checklistId" bigint, title text,
                   "whyCode" text, "whyArgs" text[], "opensOn" date, "dueOn" date, predicted boolean, "graceDays" integer)
            join checklist c on c.id = w."checklistId"
            order by w."unitId", w."ruleId", w.occurrence
            on conflict (unit_id, rule_id, occurrence) do update
              set state = 'OPEN', state_why = null, site_id = excluded.site_id, position_id = excluded.position_id,
                  title = excluded.title, why = null, why_code = excluded.why_code, why_args = excluded.why_args,
                  opens_on = excluded.opens_on, due_on = excluded.due_on, predicted = excluded.predicted,
                  grace_days = excluded.grace_days, checklist_id = excluded.checklist_id,
                  minutes = case when task.checklist_id = excluded.checklist_id then task.minutes else excluded.minutes end
              where task.state <> 'SIGNED'
            returning unit_id
            """;

    private static final String WITHDRAW = """
            update task t set state = 'WITHDRAWN', state_why = w.why
            from json_to_recordset(cast(:gone as json)) as w(id bigint, why text)
            where t.id = w.id and t.state = 'OPEN'
            returning t.unit_id
            """;

    private final CareRules rules;
    private final PlanFacts facts;
    private final JdbcClient jdbc;
    private final JsonMapper json;
    private final Clock clock;

    Planner(CareRules rules, PlanFacts facts, JdbcClient jdbc, JsonMapper json, Clock clock) {
        this.rules = rules;
        this.facts = facts;
        this.jdbc = jdbc;
        this.json = json;
        this.clock = clock;
    }

    /** A task as the database is told of it. */
    private record Row(
            long ruleId,
            long unitId,
            String occurrence,
            long siteId,
            @Nullable Long positionId,
            long checklistId,
            String title,
            String whyCode,
            List<String> whyArgs,
            LocalDate opensOn,
            LocalDate dueOn,
            boolean predicted,
            int graceDays) {}

    /** A task that is wanted no more. */
    private record Gone(long id, String why) {}

    /** Plans these units and those beside them, or all when {@code units} is null, and gives all that were looked at. */
    Set<Long> plan(@Nullable Set<Long> units) {
        holdOff();
        List<CareRule> all = rules.rules();
        Map<Long, CareRule> byId = all.stream().collect(Collectors.toMap(CareRule::id, Function.identity()));
        Nearest nearest = new Nearest(all);
        List<Long> asked = List.copyOf(units == null ? everyUnit() : withThoseBeside(units));
        for (int from = 0; from < asked.size(); from += UNITS_AT_ONCE) {
            plan(asked.subList(from, Math.min(from + UNITS_AT_ONCE, asked.size())), byId, nearest);
        }
        return Set.copyOf(asked);
    }

    private void plan(List<Long> chunk, Map<Long, CareRule> byId, Nearest nearest) {
        PlanFacts.Loaded loaded = facts.load(chunk, byId);
        List<Row> rows = new ArrayList<>();
        List<Gone> gone = new ArrayList<>();
        for (PlanFacts.Standing unit : loaded.units()) {
            List<OpenTask> open = loaded.open().getOrDefault(unit.id(), List.of());
            if (unit.retired()) {
                open.forEach(task -> gone.add(new Gone(task.id(), "RETIRED")));
                continue;
            }
            List<Applied> applied =
                    nearest.of(unit.id(), unit.positionId(), unit.siteId(), unit.modelId(), unit.kind());
            Engine engine = new Engine(loaded.facts(unit));
            compare(unit, open, engine, engine.plan(applied), byId, rows, gone);
        }
        write(rows, gone);
    }

    private static void compare(
            PlanFacts.Standing unit,
            List<OpenTask> open,
            Engine engine,
            Engine.Plan plan,
            Map<Long, CareRule> byId,
            List<Row> rows,
            List<Gone> gone) {
        Map<String, OpenTask> there = new HashMap<>();
        Set<Long> begun = new HashSet<>();
        Set<Long> leftOver = new HashSet<>();
        for (OpenTask task : open) {
            if (task.ruleId() == null) {
                leftOver.add(task.checklistId());
            } else {
                there.put(task.ruleId() + " " + task.occurrence(), task);
                if (task.started() && !Wanted.standsForItself(task.occurrence())) {
                    begun.add(task.ruleId());
                }
            }
        }
        for (Wanted wanted : plan.wanted()) {
            OpenTask task = there.remove(wanted.rule().id() + " " + wanted.occurrence());
            // one that somebody has begun stays as it is, and is the only one of its rule; what other work left to do
            // is not asked twice
            boolean asked = !Wanted.standsForItself(wanted.occurrence())
                    && (begun.contains(wanted.rule().id())
                            || leftOver.contains(wanted.rule().checklistId()));
            if (task == null ? !asked : !task.started() && !task.agrees(wanted, unit)) {
                rows.add(row(unit, wanted));
            }
        }
        for (OpenTask task : there.values()) {
            if (!task.started()) {
                gone.add(new Gone(task.id(), task.goneBecause(unit, engine, plan, byId)));
            }
        }
    }

    private static Row row(PlanFacts.Standing unit, Wanted wanted) {
        CareRule rule = wanted.rule();
        return new Row(
                rule.id(),
                unit.id(),
                wanted.occurrence(),
                unit.siteId(),
                unit.positionId(),
                rule.checklistId(),
                wanted.title(),
                wanted.days().why().name(),
                wanted.days().why().args(),
                wanted.days().opensOn(),
                wanted.days().dueOn(),
                wanted.days().predicted(),
                rule.graceDays());
    }

    private void write(List<Row> rows, List<Gone> gone) {
        if (!gone.isEmpty()) {
            jdbc.sql(WITHDRAW)
                    .param("gone", json.writeValueAsString(gone))
                    .query(Long.class)
                    .list();
        }
        if (!rows.isEmpty()) {
            jdbc.sql(OPEN)
                    .param("wanted", json.writeValueAsString(rows))
                    .param("now", clock.instant().atOffset(ZoneOffset.UTC))
                    .query(Long.class)
                    .list();
        }
    }

    private Set<Long> everyUnit() {
        return new TreeSet<>(
                jdbc.sql("select id from pump_unit").query(Long.class).list());
    }

    /** What is done or read on one pump of a position may concern the others in it. */
    private Set<Long> withThoseBeside(Set<Long> units) {
        return new TreeSet<>(jdbc.sql("""
                        select unnest(cast(:units as bigint[]))
                        union
                        select other.unit_id from stand mine
                        join stand other on other.position_id = mine.position_id and other.until is null
                        where mine.unit_id = any(:units) and mine.position_id is not null""")
                .param("units", units.toArray(Long[]::new))
                .query(Long.class)
                .list());
    }

    /** Holds planning off until the end of the transaction, so that no task is withdrawn under the hand that works on it. */
    void holdOff() {
        jdbc.sql("select pg_advisory_xact_lock(?)").param(PLANNING).query().singleRow();
    }

    /** The units that stand at these sites or have something to do there. */
    Set<Long> unitsAt(Set<Long> siteIds) {
        return jdbc.sql("""
                        select unit_id from stand where until is null and site_id = any(:sites)
                        union select unit_id from task where state = 'OPEN' and site_id = any(:sites)""")
                .param("sites", siteIds.toArray(Long[]::new))
                .query(Long.class)
                .set();
    }

    /** The same for all sites in this time zone. */
    Set<Long> unitsIn(ZoneId zone) {
        return jdbc.sql("""
                        select unit_id from stand where until is null and site_id in (select id from site where zone = :zone)
                        union
                        select unit_id from task where state = 'OPEN' and site_id in (select id from site where zone = :zone)""").param("zone", zone.getId()).query(Long.class).set();
    }
}
