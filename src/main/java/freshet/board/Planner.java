package freshet.board;

import freshet.places.Places;
import freshet.places.Site;
import freshet.places.Span;
import freshet.places.Window;
import freshet.places.WindowKind;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/**
 * Makes the tasks of the season windows agree with the register: one for each unit in care and each turn of a window of its site, from
 * the turn that opened last to those that open within a year. Saying so twice changes nothing.
 */
@Component
class Planner {

    private static final int DAYS_AHEAD = 366;
    // planning is done by one at a time, and by nobody while somebody answers or signs; taken before any row is touched
    private static final long PLANNING = 5_318_008_001L;

    // In tables of their own for one transaction, counted before they are joined. Stands are looked up unit by unit and
    // turns by their
    // site: right after an import the database has no statistics, and would choose far worse by itself.
    private static final String ROOM_FOR_TURNS = """
            create temporary table if not exists turn (
              site_id bigint, kind text, occurrence text, label text, why text, opens_on date, due_on date) on commit drop
            """;

    private static final String TURNS = """
            insert into turn
            select * from jsonb_to_recordset(cast(? as jsonb))
              as t("siteId" bigint, kind text, occurrence text, label text, why text, "opensOn" date, "dueOn" date)
            """;

    private static final String ROOM_FOR_WANTED = """
            create temporary table if not exists wanted_task (
              unit_id bigint, rule_id bigint, occurrence text, site_id bigint, position_id bigint, checklist_id bigint,
              title text, why text, opens_on date, due_on date, minutes integer) on commit drop
            """;

    // A turn is not wanted again when the unit has a signed task of the same rule whose days overlap it: the work
    // follows the unit
    // to another site, and outlives a window that was replaced.
    private static final String WANTED = """
            insert into wanted_task
            select u.id, r.id, t.occurrence, st.site_id, st.position_id, r.checklist_id,
                   r.name || ' ' || t.label, t.why, t.opens_on, t.due_on, c.minutes
            from pump_unit u
            join pump_model m on m.id = u.model_id
            cross join lateral (select * from stand where unit_id = u.id and until is null limit 1) st
            join turn t on t.site_id = st.site_id and t.due_on >= u.in_care_from
            join care_rule r on r.active and r.trigger_kind = t.kind and r.pump_kind = m.kind
            join checklist c on c.id = r.checklist_id
            where u.retired_on is null and (:all or u.id = any(:units))
              and not exists (
                select 1 from task s
                where s.unit_id = u.id and s.rule_id = r.id and s.state = 'SIGNED' and s.occurrence <> t.occurrence
                  and s.opens_on <= t.due_on and s.due_on >= t.opens_on)
            """;

    private static final String OPEN = """
            insert into task (rule_id, unit_id, occurrence, site_id, position_id, checklist_id, title, why, opens_on, due_on,
                              minutes, state, planned_at)
            select w.rule_id, w.unit_id, w.occurrence, w.site_id, w.position_id, w.checklist_id, w.title, w.why,
                   w.opens_on, w.due_on, w.minutes, 'OPEN', :now
            from wanted_task w
            left join task t on t.unit_id = w.unit_id and t.rule_id = w.rule_id and t.occurrence = w.occurrence
            where t.id is null
               or t.state <> 'SIGNED'
                  and (t.state, t.site_id, t.position_id, t.why, t.opens_on, t.due_on)
                    is distinct from ('OPEN', w.site_id, w.position_id, w.why, w.opens_on, w.due_on)
            order by w.unit_id, w.rule_id, w.occurrence
            on conflict (unit_id, rule_id, occurrence) do update
              set state = 'OPEN', state_why = null, site_id = excluded.site_id, position_id = excluded.position_id,
                  why = excluded.why, opens_on = excluded.opens_on, due_on = excluded.due_on
              where task.state <> 'SIGNED'
            returning unit_id
            """;

    // started_at stands on the row itself, so that an answer kept at this moment keeps the task
    private static final String WITHDRAW = """
            update task t
            set state = 'WITHDRAWN',
                state_why = case
                  when u.retired_on is not null then 'RETIRED'
                  when st.site_id <> t.site_id then 'MOVED'
                  when exists (select 1 from task s where s.unit_id = t.unit_id and s.rule_id = t.rule_id and s.state = 'SIGNED'
                                 and s.opens_on <= t.due_on and s.due_on >= t.opens_on) then 'DONE_ALREADY'
                  when exists (select 1 from wanted_task w where w.unit_id = t.unit_id and w.rule_id = t.rule_id
                                 and split_part(w.occurrence, ':', 1) = split_part(t.occurrence, ':', 1)) then 'NEXT_OPENED'
                  else 'NO_LONGER_DUE' end
            from pump_unit u cross join lateral (select * from stand where unit_id = u.id and until is null limit 1) st
            where u.id = t.unit_id and t.state = 'OPEN' and (:all or t.unit_id = any(:units))
              and (u.retired_on is not null
                   or t.started_at is null
                     and t.rule_id in (select id from care_rule where trigger_kind in ('OPENING', 'CLOSING')))
              and not exists (select 1 from wanted_task w
                              where w.unit_id = t.unit_id and w.rule_id = t.rule_id and w.occurrence = t.occurrence)
            returning t.unit_id
            """;

    private final Places places;
    private final JdbcClient jdbc;
    private final JsonMapper json;
    private final Clock clock;

    Planner(Places places, JdbcClient jdbc, JsonMapper json, Clock clock) {
        this.places = places;
        this.jdbc = jdbc;
        this.json = json;
        this.clock = clock;
    }

    /** A turn of a window as the database is told of it. */
    private record Turn(
            long siteId, String kind, String occurrence, String label, String why, String opensOn, String dueOn) {}

    /** Plans these units, or all when {@code units} is null, and gives those for which something changed. */
    Set<Long> plan(@Nullable Set<Long> units) {
        jdbc.sql("select pg_advisory_xact_lock(?)").param(PLANNING).query().singleRow();
        List<Site> sites = places.sites();
        String turns =
                json.writeValueAsString(sites.stream().flatMap(this::turns).toList());
        jdbc.sql(ROOM_FOR_TURNS).update();
        jdbc.sql(ROOM_FOR_WANTED).update();
        jdbc.sql("truncate turn, wanted_task").update();
        jdbc.sql("create index if not exists turn_site on turn (site_id)").update();
        jdbc.sql(TURNS).param(turns).update();
        jdbc.sql("analyze turn").update();
        ask(WANTED, units).update();
        jdbc.sql("analyze wanted_task").update();
        Set<Long> changed = new HashSet<>();
        changed.addAll(jdbc.sql(OPEN)
                .param("now", clock.instant().atOffset(ZoneOffset.UTC))
                .query(Long.class)
                .list());
        changed.addAll(ask(WITHDRAW, units).query(Long.class).list());
        return changed;
    }

    private JdbcClient.StatementSpec ask(String step, @Nullable Set<Long> units) {
        return jdbc.sql(step)
                .param("all", units == null)
                .param("units", units == null ? new Long[0] : units.toArray(Long[]::new));
    }

    /** Holds planning off until the end of the transaction, so that no task is withdrawn under the hand that works on it. */
    void holdOff() {
        jdbc.sql("select pg_advisory_xact_lock_shared(?)")
                .param(PLANNING)
                .query()
                .singleRow();
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

    private Stream<Turn> turns(Site site) {
        LocalDate today = site.today(clock);
        return site.windows().stream()
                .filter(window -> window.kind() != WindowKind.RUNNING)
                .flatMap(window -> due(window, today).stream())
                .map(span -> new Turn(
                        site.id(),
                        span.window().kind().name(),
                        occurrence(span),
                        span.label(),
                        why(span),
                        span.opensOn().toString(),
                        span.dueOn().toString()));
    }

    /** The turn that opened last, for it may still be owed, and those that open within a year; a newer turn takes the place of an older. */
    static List<Span> due(Window window, LocalDate today) {
        List<Span> due = new ArrayList<>();
        for (Span span : window.spans(today.minusDays(DAYS_AHEAD), today.plusDays(DAYS_AHEAD))) {
            if (!span.opensOn().isAfter(today)) {
                due.clear();
            }
            due.add(span);
        }
        return due;
    }

    static String occurrence(Span span) {
        return span.window().id() + ":" + span.year();
    }

    private static String why(Span span) {
        DateTimeFormatter day = DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH);
        return "%s, %s to %s".formatted(span.window().name(), day.format(span.opensOn()), day.format(span.dueOn()));
    }
}
