package freshet.findings;

import freshet.people.Person;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The rows of holds. */
@Component
class HoldTable {

    private static final String HOLDS = """
            select h.*, u.tag, s.zone, holder.full_name as held_name, releaser.full_name as released_name
            from hold h
            join pump_unit u on u.id = h.unit_id
            join stand st on st.unit_id = u.id and st.until is null
            join site s on s.id = st.site_id
            join account holder on holder.id = h.held_by
            left join account releaser on releaser.id = h.released_by
            """;

    private final JdbcClient jdbc;

    HoldTable(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<Hold> ofUnit(long unitId) {
        return jdbc.sql(HOLDS + "where h.unit_id = ? order by h.released_at desc nulls first, h.since desc, h.id desc")
                .param(unitId)
                .query((row, n) -> hold(row))
                .list();
    }

    /** All that are open, each unit's oldest first. */
    List<Hold> open() {
        return jdbc.sql(HOLDS + "where h.released_at is null order by u.tag, h.since, h.id")
                .query((row, n) -> hold(row))
                .list();
    }

    List<Hold> open(Collection<Long> unitIds) {
        return jdbc.sql(HOLDS + "where h.released_at is null and h.unit_id = any(?) order by h.unit_id, h.since, h.id")
                .param(unitIds.toArray(Long[]::new))
                .query((row, n) -> hold(row))
                .list();
    }

    /** Gives the id of the new hold, or none when one of this kind is open already. */
    Optional<Long> insert(long unitId, HoldKind kind, Why why, Person by, Instant now) {
        return jdbc.sql("""
                        insert into hold (unit_id, kind, why, why_code, why_args, since, held_by)
                        values (:unit, :kind, :why, :code, :args, :now, :by)
                        on conflict (unit_id, kind) where released_at is null do nothing returning id""")
                .param("unit", unitId)
                .param("kind", kind.name())
                .param("why", why.words())
                .param("code", why.code())
                .param("args", why.arguments().toArray(String[]::new))
                .param("now", now.atOffset(ZoneOffset.UTC))
                .param("by", by.id())
                .query(Long.class)
                .optional();
    }

    /** Only by a record of this unit whose work began after the hold did. */
    boolean release(long id, long recordId, Person by, Instant now) {
        return jdbc.sql("""
                        update hold h set released_at = :now, released_by = :by, released_record_id = r.id
                        from service_record r
                        where h.id = :id and h.released_at is null
                          and r.id = :record and r.unit_id = h.unit_id and r.started_at >= date_trunc('minute', h.since)""")
                        .param("now", now.atOffset(ZoneOffset.UTC))
                        .param("by", by.id())
                        .param("id", id)
                        .param("record", recordId)
                        .update()
                == 1;
    }

    private static Hold hold(ResultSet row) throws SQLException {
        OffsetDateTime released = row.getObject("released_at", OffsetDateTime.class);
        return new Hold(
                row.getLong("id"),
                row.getLong("unit_id"),
                row.getString("tag"),
                ZoneId.of(row.getString("zone")),
                HoldKind.valueOf(row.getString("kind")),
                new Why(row.getString("why"), row.getString("why_code"), Arrays.asList((String[])
                        row.getArray("why_args").getArray())),
                row.getObject("since", OffsetDateTime.class).toInstant(),
                row.getString("held_name"),
                released == null ? null : released.toInstant(),
                row.getString("released_name"),
                row.getObject("released_record_id", Long.class));
    }
}
