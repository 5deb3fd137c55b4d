package freshet.rounds;

import freshet.people.Person;
import freshet.pumps.PumpKind;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The stops of rounds, with what stands of their tasks and pumps now. */
@Component
class StopTable {

    /** What a look at a pump takes: common practice, no source. */
    static final int LOOK_MINUTES = 10;

    static final String NO_ACCESS = """
            select n.*, s.name as site_name, s.zone, a.full_name as noted_by_name
            from no_access n join site s on s.id = n.site_id join account a on a.id = n.noted_by
            """;

    // a task is done where it was planned, a pump to look at is where it stands now
    private static final String STOPS = """
            select st.*, u.id as the_unit, u.tag, u.retired_on, m.kind, t.title, t.opens_on, t.due_on, t.state, t.state_why,
                   coalesce(t.minutes, :look) as minutes, s.id as site_id, s.name as site_name, s.zone, s.address,
                   n.note as access, p.name as position_name, p.note as position_note,
                   case when d.site_id = s.id and d.position_id is not distinct from p.id then d.spot end as spot,
                   coalesce(x.signed_at, st.seen_at) as done_at, coalesce(x.signed_name, seer.full_name) as done_by,
                   x.id as record_id, t.assigned_to, t.version as task_version, mine.full_name as assigned_name
            from round_stop st
            left join task t on t.id = st.task_id
            join pump_unit u on u.id = coalesce(t.unit_id, st.unit_id)
            join pump_model m on m.id = u.model_id
            join stand d on d.unit_id = u.id and d.until is null
            join site s on s.id = coalesce(t.site_id, d.site_id)
            left join position p on p.id = case when t.id is null then d.position_id else t.position_id end
            left join access_note n on n.site_id = s.id
            left join account seer on seer.id = st.seen_by
            left join account mine on mine.id = t.assigned_to
            left join lateral (
              select r.id, r.signed_at, r.signed_name from service_record r where r.task_id = t.id
                and not exists (select 1 from service_record c where c.corrects_id = r.id) limit 1) x on true
            where st.round_id = any(:rounds)
            order by st.round_id, st.ordinal
            """;

    private static final String ALSO = """
            select mine.id as stop_id, r.id, r.name, r.day, a.full_name
            from round_stop mine
            join round_stop o on (o.task_id = mine.task_id or o.unit_id = mine.unit_id) and o.round_id <> mine.round_id
            join round r on r.id = o.round_id and r.withdrawn_at is null
            left join account a on a.id = r.person_id
            where mine.round_id = any(:rounds)
            order by r.day, r.id
            """;

    private final JdbcClient jdbc;

    StopTable(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<Stop> ofRounds(Collection<Long> roundIds) {
        Long[] rounds = roundIds.toArray(Long[]::new);
        if (rounds.length == 0) {
            return List.of();
        }
        Map<String, List<NoAccess>> shut = jdbc
                .sql(NO_ACCESS + "where n.round_id = any(:rounds) order by n.at, n.id")
                .param("rounds", rounds)
                .query((row, n) -> RoundTable.noAccess(row))
                .list()
                .stream()
                .collect(Collectors.groupingBy(each -> key(each.roundId(), each.taskId(), each.unitId())));
        Map<Long, List<AlsoOn>> also = new HashMap<>();
        jdbc.sql(ALSO).param("rounds", rounds).query(row -> {
            also.computeIfAbsent(row.getLong("stop_id"), id -> new java.util.ArrayList<>())
                    .add(new AlsoOn(
                            row.getLong("id"),
                            row.getString("name"),
                            row.getObject("day", LocalDate.class),
                            row.getString("full_name")));
        });
        Map<Long, Integer> places = new HashMap<>();
        return jdbc.sql(STOPS)
                .param("rounds", rounds)
                .param("look", LOOK_MINUTES)
                .query((row, n) -> stop(row, places.merge(row.getLong("round_id"), 1, Integer::sum), shut, also))
                .list();
    }

    private static String key(long roundId, @Nullable Long taskId, long unitId) {
        return roundId + (taskId == null ? ":unit:" + unitId : ":task:" + taskId);
    }

    private static Stop stop(ResultSet row, int place, Map<String, List<NoAccess>> shut, Map<Long, List<AlsoOn>> also)
            throws SQLException {
        Long taskId = row.getObject("task_id", Long.class);
        List<NoAccess> noAccess =
                shut.getOrDefault(key(row.getLong("round_id"), taskId, row.getLong("the_unit")), List.of());
        return new Stop(
                row.getLong("id"),
                row.getLong("round_id"),
                place,
                row.getLong("the_unit"),
                row.getString("tag"),
                PumpKind.valueOf(row.getString("kind")),
                taskId,
                row.getString("title"),
                row.getObject("opens_on", LocalDate.class),
                row.getObject("due_on", LocalDate.class),
                row.getInt("minutes"),
                state(row, taskId, !noAccess.isEmpty()),
                row.getString("state_why"),
                row.getObject("record_id", Long.class),
                RoundTable.instant(row, "done_at"),
                row.getString("done_by"),
                row.getLong("assigned_to"),
                row.getString("assigned_name"),
                row.getInt("task_version"),
                row.getLong("site_id"),
                row.getString("site_name"),
                ZoneId.of(row.getString("zone")),
                row.getString("address"),
                row.getString("access"),
                row.getString("position_name"),
                row.getString("position_note"),
                row.getString("spot"),
                noAccess,
                also.getOrDefault(row.getLong("id"), List.of()));
    }

    private static StopState state(ResultSet row, @Nullable Long taskId, boolean shut) throws SQLException {
        boolean done = taskId == null ? row.getObject("seen_at") != null : "SIGNED".equals(row.getString("state"));
        boolean withdrawn =
                taskId == null ? row.getObject("retired_on") != null : "WITHDRAWN".equals(row.getString("state"));
        return done ? StopState.DONE : withdrawn ? StopState.WITHDRAWN : shut ? StopState.NO_ACCESS : StopState.LEFT;
    }

    /** Adds stops at the end of a round, in this order; those that it has already stay where they are. */
    void add(long roundId, Collection<Long> taskIds, Collection<Long> unitIds) {
        taskIds.forEach(id -> add(roundId, id, null));
        unitIds.forEach(id -> add(roundId, null, id));
    }

    private void add(long roundId, @Nullable Long taskId, @Nullable Long unitId) {
        jdbc.sql("""
                        insert into round_stop (round_id, ordinal, task_id, unit_id)
                        select :round, coalesce(max(ordinal), 0) + 1, :task, :unit from round_stop where round_id = :round
                        having not coalesce(bool_or(task_id = cast(:task as bigint) or unit_id = cast(:unit as bigint)), false)""")
                .param("round", roundId)
                .param("task", taskId, java.sql.Types.BIGINT)
                .param("unit", unitId, java.sql.Types.BIGINT)
                .update();
    }

    void remove(long stopId) {
        jdbc.sql("delete from round_stop where id = ?").param(stopId).update();
    }

    /** Puts the stops of a round in this order. */
    void order(List<Long> stopIds) {
        for (int i = 0; i < stopIds.size(); i++) {
            jdbc.sql("update round_stop set ordinal = ? where id = ?")
                    .params(i + 1, stopIds.get(i))
                    .update();
        }
    }

    void seen(long stopId, Person by, Instant now) {
        jdbc.sql("update round_stop set seen_at = ?, seen_by = ? where id = ? and seen_at is null")
                .params(now.atOffset(ZoneOffset.UTC), by.id(), stopId)
                .update();
    }
}
