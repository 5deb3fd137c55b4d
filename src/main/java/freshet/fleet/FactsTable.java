package freshet.fleet;

import freshet.findings.Finding;
import freshet.findings.Findings;
import freshet.findings.Hold;
import freshet.happenings.HappeningKind;
import freshet.readings.Capacity;
import freshet.readings.Readings;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Reads the facts that readiness is judged from, for many units at once; a retired unit has none. */
@Component
class FactsTable {

    // a record stands when no other corrects it; a task is owed from the first of its days at its unit's site
    private static final String FACTS = """
            with asked as (
              select u.id, m.kind, m.drive = 'ENGINE' as engine, st.site_id, s.zone,
                     cast(cast(:now as timestamptz) at time zone s.zone as date) as today
              from pump_unit u
              join pump_model m on m.id = u.model_id
              join stand st on st.unit_id = u.id and st.until is null
              join site s on s.id = st.site_id
              where u.id = any(:units) and u.retired_on is null
            ), standing as (
              select r.id, r.unit_id, r.ended_at, c.effect,
                     -- a line that an owner added is not the test: the lines of the test are held at a severity
                     (select bool_and(l.verdict <> 'FAIL' and (l.verdict <> 'LEFT' or not k.required))
                             and bool_or(k.held_severity is not null) from record_line l
                        join check_line k on k.id = l.check_line_id and k.competence = 'ELECTRICAL'
                        where l.record_id = r.id) as electrical
              from asked a
              join service_record r on r.unit_id = a.id
              join checklist_version v on v.id = r.checklist_version_id
              join checklist c on c.id = v.checklist_id
              where not exists (select 1 from service_record n where n.corrects_id = r.id)
            ), proof as (
              select distinct on (unit_id) unit_id, id, ended_at from standing where effect = 'PROVES'
              order by unit_id, ended_at desc, id desc
            ), last as (
              select unit_id, max(ended_at) filter (where effect = 'LAYS_UP') as laid_up_at,
                     max(ended_at) filter (where electrical) as electrical_at
              from standing group by unit_id
            ), todo as (
              select t.id, t.unit_id, t.title, t.opens_on, t.due_on, t.opens_on <= a.today as begun,
                     t.due_on + t.grace_days as late_after, t.due_on + t.grace_days < a.today as late, c.phase
              from asked a join task t on t.unit_id = a.id and t.state = 'OPEN' join checklist c on c.id = t.checklist_id
            ), owed as (
              select distinct on (unit_id) unit_id, id, title, due_on, late from todo where phase in ('OPENING', 'AFTER_REPAIR') and begun
              order by unit_id, due_on, id
            ), unchecked as (
              -- a test each month that is late, or a check after something happened that is to do; the worse first
              select distinct on (unit_id) unit_id, id, title, due_on, late, phase <> 'MONTHLY' as after_event from todo
              where phase = 'MONTHLY' and late or phase in ('AFTER_STORM', 'AFTER_HIRE') and begun
              order by unit_id, phase <> 'MONTHLY' and late desc, due_on, id
            ), work as (
              select unit_id, min(due_on) as next_due_on, count(*) filter (where begun) as open_tasks,
                     min(id) filter (where phase = 'ELECTRICAL' and begun) as electrical_task_id,
                     min(opens_on) filter (where phase = 'OPENING' and not begun) as next_opening_on,
                     min(late_after) filter (where phase = 'MONTHLY') as next_late_after
              from todo group by unit_id
            ), touched as (
              select a.id as unit_id, h.id, h.kind, h.happened_at
              from asked a join happening h on h.unit_id = a.id and h.withdrawn_at is null
              union all
              select a.id, h.id, h.kind, h.happened_at
              from asked a
              join stand st on st.unit_id = a.id
              join happening h on h.site_id = st.site_id and h.withdrawn_at is null
                and h.happened_at >= st.since and (st.until is null or h.happened_at < st.until)
              union all
              select a.id, h.id, h.kind, h.happened_at
              from asked a
              join stand st on st.unit_id = a.id
              join happening h on h.position_id = st.position_id and h.withdrawn_at is null
                and h.happened_at >= st.since and (st.until is null or h.happened_at < st.until)
            ), hardest as (
              select distinct on (t.unit_id) t.unit_id, t.kind, t.happened_at
              from touched t join asked a on a.id = t.unit_id
              where t.kind in ('DRY_RUN', 'FOUL_USE', 'SALT_USE', 'CHEMICAL_USE')
                -- sewage is what a sewage pump is for
                and (t.kind <> 'FOUL_USE' or a.kind <> 'SEWAGE')
              order by t.unit_id, t.happened_at desc, t.id desc
            )
            select a.id as unit_id, a.zone, a.engine, proof.ended_at as proved_at, proof.id as proof_id, last.laid_up_at, last.electrical_at,
                   (select max(f.closed_at) from finding f where f.unit_id = a.id and f.severity >= 3) as mended_at,
                   hardest.kind as hard_kind, hardest.happened_at as hard_at,
                   exists (select 1 from checklist c where c.effect = 'PROVES' and (c.pump_kind is null or c.pump_kind = a.kind))
                     as provable,
                   owed.id as owed_id, owed.title as owed_title, owed.due_on as owed_due_on, owed.late as owed_late,
                   unchecked.id as unchecked_id, unchecked.title as unchecked_title, unchecked.due_on as unchecked_due_on,
                   unchecked.late as unchecked_late, unchecked.after_event,
                   work.electrical_task_id, work.next_opening_on, work.next_late_after,
                   work.next_due_on, coalesce(work.open_tasks, 0) as open_tasks
            from asked a
            left join proof on proof.unit_id = a.id
            left join last on last.unit_id = a.id
            left join owed on owed.unit_id = a.id
            left join unchecked on unchecked.unit_id = a.id
            left join work on work.unit_id = a.id
            left join hardest on hardest.unit_id = a.id
            order by a.id
            """;

    private final JdbcClient jdbc;
    private final Readings readings;
    private final Findings findings;
    private final Clock clock;

    FactsTable(JdbcClient jdbc, Readings readings, Findings findings, Clock clock) {
        this.jdbc = jdbc;
        this.readings = readings;
        this.findings = findings;
        this.clock = clock;
    }

    /** The units that stand at a site in this time zone. */
    Set<Long> unitsIn(ZoneId zone) {
        return jdbc.sql("""
                        select unit_id from stand
                        where until is null and site_id in (select id from site where zone = ?)""").param(zone.getId()).query(Long.class).set();
    }

    List<Facts> facts(Collection<Long> unitIds) {
        Long[] units = unitIds.toArray(Long[]::new);
        Map<Long, Capacity> capacities = readings.capacities(unitIds);
        Map<Long, List<Facts.OpenFinding>> open = open(unitIds);
        Map<Long, List<Hold>> holds = findings.openHoldsOf(unitIds);
        return jdbc.sql(FACTS)
                .param("units", units)
                .param("now", clock.instant().atOffset(ZoneOffset.UTC))
                .query((row, n) -> {
                    long id = row.getLong("unit_id");
                    return facts(
                            row,
                            open.getOrDefault(id, List.of()),
                            holds.getOrDefault(id, List.of()),
                            capacities.get(id));
                })
                .list();
    }

    private Map<Long, List<Facts.OpenFinding>> open(Collection<Long> unitIds) {
        return findings.openFindingsOf(unitIds).stream()
                .collect(Collectors.groupingBy(
                        Finding::unitId,
                        Collectors.mapping(
                                finding -> new Facts.OpenFinding(
                                        finding.id(),
                                        finding.severity(),
                                        finding.what(),
                                        finding.openedAt(),
                                        finding.waiver()),
                                Collectors.toList())));
    }

    private static Facts facts(
            ResultSet row, List<Facts.OpenFinding> findings, List<Hold> holds, @Nullable Capacity capacity)
            throws SQLException {
        Instant proved = instant(row, "proved_at");
        Long owed = row.getObject("owed_id", Long.class);
        Long unchecked = row.getObject("unchecked_id", Long.class);
        Instant hard = instant(row, "hard_at");
        return new Facts(
                row.getLong("unit_id"),
                ZoneId.of(row.getString("zone")),
                row.getBoolean("provable"),
                row.getBoolean("engine"),
                findings,
                holds,
                proved == null ? null : new Facts.Proof(proved, row.getLong("proof_id")),
                instant(row, "laid_up_at"),
                instant(row, "electrical_at"),
                instant(row, "mended_at"),
                hard == null ? null : new Facts.HardUse(HappeningKind.valueOf(row.getString("hard_kind")), hard),
                owed == null ? null : owed(row, owed, "owed"),
                unchecked == null
                        ? null
                        : new Facts.Unchecked(owed(row, unchecked, "unchecked"), row.getBoolean("after_event")),
                row.getObject("electrical_task_id", Long.class),
                row.getObject("next_opening_on", LocalDate.class),
                row.getObject("next_late_after", LocalDate.class),
                row.getObject("next_due_on", LocalDate.class),
                row.getInt("open_tasks"),
                capacity);
    }

    private static Facts.Owed owed(ResultSet row, long taskId, String prefix) throws SQLException {
        return new Facts.Owed(
                taskId,
                row.getString(prefix + "_title"),
                row.getObject(prefix + "_due_on", LocalDate.class),
                row.getBoolean(prefix + "_late"));
    }

    private static @Nullable Instant instant(ResultSet row, String column) throws SQLException {
        OffsetDateTime at = row.getObject(column, OffsetDateTime.class);
        return at == null ? null : at.toInstant();
    }
}
