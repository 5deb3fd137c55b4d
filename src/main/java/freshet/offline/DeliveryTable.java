package freshet.offline;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/** The rows of deliveries and of conflicts. */
@Component
class DeliveryTable {

    private static final String CONFLICTS = """
            select c.*, p.full_name, u.tag, s.full_name as settled_name
            from conflict c
            join account p on p.id = c.person_id
            join pump_unit u on u.id = c.unit_id
            left join account s on s.id = c.settled_by
            """;

    private final JdbcClient jdbc;
    private final JsonMapper json;

    DeliveryTable(JdbcClient jdbc, JsonMapper json) {
        this.jdbc = jdbc;
        this.json = json;
    }

    /** What was answered to this entry before; whoever delivers it at this moment is waited for by {@link #begin}. */
    Optional<Delivered> answered(Entry entry, long personId) {
        return jdbc.sql("select outcome from delivery where person_id = ? and key = ?")
                .params(personId, entry.key())
                .query(String.class)
                .optional()
                .map(outcome -> json.readValue(outcome, Delivered.class));
    }

    /** Takes the entry's key until the end of the transaction; empty when it was delivered already. */
    Optional<Long> begin(Entry entry, long personId, Instant now) {
        return jdbc.sql("""
                        insert into delivery (person_id, key, kind, ordinal, done_at, offset_ms, received_at)
                        values (:person, :key, :kind, :order, :done, :offset, :now)
                        on conflict (person_id, key) do nothing returning id""")
                .param("person", personId)
                .param("key", entry.key())
                .param("kind", entry.kind().name())
                .param("order", entry.order())
                .param("done", utc(entry.doneAt()))
                .param("offset", entry.offsetMs())
                .param("now", utc(now))
                .query(Long.class)
                .optional();
    }

    void answer(long deliveryId, Delivered delivered) {
        jdbc.sql("update delivery set outcome = cast(? as jsonb) where id = ?")
                .params(json.writeValueAsString(delivered), deliveryId)
                .update();
    }

    long keep(long deliveryId, long personId, long unitId, Conflict.Why why, Entry entry, Instant now) {
        return jdbc.sql("""
                        insert into conflict (delivery_id, person_id, unit_id, why, title, entry, found_at)
                        values (?, ?, ?, ?, ?, cast(? as jsonb), ?) returning id""")
                .params(
                        deliveryId,
                        personId,
                        unitId,
                        why.name(),
                        entry.title(),
                        json.writeValueAsString(entry),
                        utc(now))
                .query(Long.class)
                .single();
    }

    Optional<Conflict> conflict(long id) {
        return jdbc.sql(CONFLICTS + "where c.id = ?")
                .param(id)
                .query((row, n) -> conflict(row))
                .optional();
    }

    /** Keeps a conflict from everybody else until the end of the transaction. */
    Optional<Conflict> held(long id) {
        jdbc.sql("select id from conflict where id = ? for update")
                .param(id)
                .query(Long.class)
                .optional();
        return conflict(id);
    }

    /** Those of one person or of all, open ones first, then the latest settled. */
    List<Conflict> conflicts(@Nullable Long personId, int most) {
        return jdbc.sql(CONFLICTS + """
                        where cast(:person as bigint) is null or c.person_id = :person
                        order by c.settled_at is not null, coalesce(c.settled_at, c.found_at) desc, c.id desc limit :most""")
                .param("person", personId, Types.BIGINT)
                .param("most", most)
                .query((row, n) -> conflict(row))
                .list();
    }

    int open(@Nullable Long personId) {
        return jdbc.sql("""
                        select count(*) from conflict
                        where settled_at is null and (cast(:person as bigint) is null or person_id = :person)""")
                .param("person", personId, Types.BIGINT)
                .query(Integer.class)
                .single();
    }

    void settle(long id, Conflict.How how, @Nullable String why, @Nullable String link, long by, Instant now) {
        jdbc.sql("""
                        update conflict set settled_how = :how, settled_why = :why, link = :link, settled_by = :by, settled_at = :now
                        where id = :id""")
                .param("how", how.name())
                .param("why", why)
                .param("link", link)
                .param("by", by)
                .param("now", utc(now))
                .param("id", id)
                .update();
    }

    private Conflict conflict(ResultSet row) throws SQLException {
        OffsetDateTime settled = row.getObject("settled_at", OffsetDateTime.class);
        String how = row.getString("settled_how");
        return new Conflict(
                row.getLong("id"),
                row.getLong("person_id"),
                row.getString("full_name"),
                row.getLong("unit_id"),
                row.getString("tag"),
                Conflict.Why.valueOf(row.getString("why")),
                json.readValue(row.getString("entry"), Entry.class),
                row.getObject("found_at", OffsetDateTime.class).toInstant(),
                settled == null ? null : settled.toInstant(),
                row.getString("settled_name"),
                how == null ? null : Conflict.How.valueOf(how),
                row.getString("settled_why"),
                row.getString("link"));
    }

    private static OffsetDateTime utc(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }
}
