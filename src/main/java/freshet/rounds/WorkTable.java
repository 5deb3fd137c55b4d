package freshet.rounds;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Reads the open tasks that are left to do, by site, in the order in which they are due. */
@Component
class WorkTable {

    private static final String LEFT = """
            from task t
            join pump_unit u on u.id = t.unit_id
            join site s on s.id = t.site_id
            left join position p on p.id = t.position_id
            left join account a on a.id = t.assigned_to
            cross join lateral (select cast(cast(:now as timestamptz) at time zone s.zone as date) as today) d
            left join lateral (
              select r.id, r.name, r.day from round_stop st join round r on r.id = st.round_id and r.withdrawn_at is null
              where st.task_id = t.id and r.day >= d.today order by r.day, r.id limit 1) r on true
            where t.state = 'OPEN' and (cast(:site as bigint) is null or t.site_id = :site)
              and (cast(:person as bigint) is null or t.assigned_to = :person)
              and (cast(:among as bigint[]) is null or t.id = any(:among))
              and case when cast(:among as bigint[]) is not null then true when cast(:monday as date) is null then t.opens_on <= d.today + :days
                       else t.due_on between :monday and cast(:monday as date) + 6 end
            """;

    private final JdbcClient jdbc;
    private final Clock clock;

    WorkTable(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** One page of it, by site and week. */
    List<WorkLine> left(WorkQuery query) {
        return page("order by s.name, s.id, date_trunc('week', t.due_on), t.due_on, u.tag, t.id", query, null);
    }

    /** These, in this order. */
    List<WorkLine> among(List<Long> ids) {
        return page(
                "order by array_position(:among, t.id)",
                new WorkQuery(null, null, null, 0, 0, Math.max(1, ids.size())),
                ids.toArray(Long[]::new));
    }

    private List<WorkLine> page(String order, WorkQuery query, Long @Nullable [] among) {
        return ask("""
                        select t.*, u.tag, s.name as site_name, p.name as position_name, t.due_on - d.today as days_left,
                               a.full_name as assigned_name, r.id as round_id, r.name as round_name, r.day as round_day
                        """ + LEFT + order + " limit :size offset :offset", query, among)
                .param("size", query.size())
                .param("offset", (long) query.page() * query.size())
                .query((row, n) -> line(row))
                .list();
    }

    int count(WorkQuery query) {
        return ask("select count(*) " + LEFT, query, null).query(Integer.class).single();
    }

    private JdbcClient.StatementSpec ask(String sql, WorkQuery query, Long @Nullable [] among) {
        return jdbc.sql(sql)
                .param("now", clock.instant().atOffset(ZoneOffset.UTC))
                .param("site", query.siteId(), java.sql.Types.BIGINT)
                .param("person", query.personId(), java.sql.Types.BIGINT)
                .param("monday", query.monday(), java.sql.Types.DATE)
                .param("days", query.days())
                .param("among", among, java.sql.Types.ARRAY);
    }

    private static WorkLine line(ResultSet row) throws SQLException {
        return new WorkLine(
                row.getLong("id"),
                row.getInt("version"),
                row.getLong("unit_id"),
                row.getString("tag"),
                row.getString("title"),
                row.getLong("site_id"),
                row.getString("site_name"),
                row.getString("position_name"),
                row.getObject("opens_on", LocalDate.class),
                row.getObject("due_on", LocalDate.class),
                -row.getLong("days_left"),
                row.getInt("grace_days"),
                row.getInt("minutes"),
                row.getLong("assigned_to"),
                row.getString("assigned_name"),
                row.getObject("round_id", Long.class),
                row.getString("round_name"),
                row.getObject("round_day", LocalDate.class));
    }
}
