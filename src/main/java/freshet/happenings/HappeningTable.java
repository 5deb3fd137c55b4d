package freshet.happenings;

import freshet.people.Person;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The rows of happenings. */
@Component
class HappeningTable {

    private static final String HAPPENINGS = """
            select h.*, coalesce(s.name, ps.name) as site_name, p.name as position_name, u.tag,
                   coalesce(s.zone, ps.zone, us.zone) as zone,
                   reporter.full_name as reported_name, withdrawer.full_name as withdrawn_name
            from happening h
            left join site s on s.id = h.site_id
            left join position p on p.id = h.position_id
            left join site ps on ps.id = p.site_id
            left join pump_unit u on u.id = h.unit_id
            left join stand ust on ust.unit_id = u.id and ust.until is null
            left join site us on us.id = ust.site_id
            left join account reporter on reporter.id = h.reported_by
            left join account withdrawer on withdrawer.id = h.withdrawn_by
            """;
    private static final String NEWEST = " order by h.happened_at desc, h.id desc";

    private final JdbcClient jdbc;

    HappeningTable(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Optional<Happening> happening(long id) {
        return jdbc.sql(HAPPENINGS + "where h.id = ?")
                .param(id)
                .query((row, n) -> happening(row))
                .optional();
    }

    List<Happening> ofUnit(long unitId) {
        return jdbc.sql(HAPPENINGS + """
                        where h.unit_id = :unit or exists (
                            select 1 from stand st
                            where st.unit_id = :unit and (st.site_id = h.site_id or st.position_id = h.position_id)
                              and st.since <= h.happened_at and (st.until is null or st.until > h.happened_at))""" + NEWEST)
                .param("unit", unitId)
                .query((row, n) -> happening(row))
                .list();
    }

    List<Happening> recent(@Nullable HappeningKind kind, boolean byHand, int size, long offset) {
        return jdbc.sql(HAPPENINGS + of(byHand) + NEWEST + " limit :size offset :offset")
                .param("kind", kind == null ? null : kind.name())
                .param("size", size)
                .param("offset", offset)
                .query((row, n) -> happening(row))
                .list();
    }

    int count(@Nullable HappeningKind kind, boolean byHand) {
        return jdbc.sql("select count(*) from happening h " + of(byHand))
                .param("kind", kind == null ? null : kind.name())
                .query(Integer.class)
                .single();
    }

    private static String of(boolean byHand) {
        return "where (cast(:kind as text) is null or h.kind = :kind)"
                + (byHand ? " and h.kind not in ('HIRE_OUT', 'HIRE_RETURN', 'REPAIRED')" : "");
    }

    /** Of these units, those whose last standing hire happening is that they went out. */
    List<Out> out(Collection<Long> unitIds) {
        return jdbc.sql("""
                        select h.unit_id, h.happened_at, h.due_back_on, s.zone
                        from (select distinct on (unit_id) * from happening
                              where unit_id = any(?) and kind in ('HIRE_OUT', 'HIRE_RETURN') and withdrawn_at is null
                              order by unit_id, happened_at desc, id desc) h
                        join stand st on st.unit_id = h.unit_id and st.until is null
                        join site s on s.id = st.site_id
                        where h.kind = 'HIRE_OUT'""")
                .param(unitIds.toArray(Long[]::new))
                .query((row, n) -> new Out(
                        row.getLong("unit_id"),
                        instant(row, "happened_at"),
                        row.getObject("due_back_on", LocalDate.class),
                        ZoneId.of(row.getString("zone"))))
                .list();
    }

    /** The units in care that these touched: named, or standing at the site or in the position at that moment. */
    Set<Long> touched(Collection<Long> ids) {
        return new HashSet<>(jdbc.sql("""
                        select h.unit_id from happening h where h.id = any(:ids) and h.unit_id is not null
                        union
                        select st.unit_id from happening h
                        join stand st on (st.site_id = h.site_id or st.position_id = h.position_id)
                            and st.since <= h.happened_at and (st.until is null or st.until > h.happened_at)
                        where h.id = any(:ids)""")
                .param("ids", ids.toArray(Long[]::new))
                .query(Long.class)
                .list());
    }

    /** The same report, sent before by the same person and still standing. */
    Optional<Long> same(HappeningDraft draft, Person by) {
        return jdbc.sql("""
                        select id from happening
                        where kind = :kind and happened_at = :at and site_id is not distinct from :site
                          and position_id is not distinct from :position and unit_id is not distinct from :unit
                          and due_back_on is not distinct from :dueBack and note is not distinct from :note
                          and reported_by = :by and withdrawn_at is null limit 1""").params(params(draft, by)).query(Long.class).optional();
    }

    long insert(HappeningDraft draft, Person by, Instant now) {
        return jdbc.sql("""
                        insert into happening (kind, happened_at, site_id, position_id, unit_id, due_back_on, note, reported_by, reported_at)
                        values (:kind, :at, :site, :position, :unit, :dueBack, :note, :by, :now) returning id""")
                .params(params(draft, by))
                .param("now", now.atOffset(ZoneOffset.UTC))
                .query(Long.class)
                .single();
    }

    private static Map<String, @Nullable Object> params(HappeningDraft draft, Person by) {
        Map<String, @Nullable Object> params = new HashMap<>();
        params.put("kind", draft.kind().name());
        params.put("at", draft.at().atOffset(ZoneOffset.UTC));
        params.put("site", draft.siteId());
        params.put("position", draft.positionId());
        params.put("unit", draft.unitId());
        params.put("dueBack", draft.dueBackOn());
        params.put("note", draft.note());
        params.put("by", by.id());
        return params;
    }

    boolean withdraw(long id, @Nullable String why, Person by, Instant now) {
        return jdbc.sql("""
                        update happening set withdrawn_at = :now, withdrawn_by = :by, withdrawn_why = :why
                        where id = :id and withdrawn_at is null""")
                        .param("now", now.atOffset(ZoneOffset.UTC))
                        .param("by", by.id())
                        .param("why", why)
                        .param("id", id)
                        .update()
                == 1;
    }

    private static Happening happening(ResultSet row) throws SQLException {
        return new Happening(
                row.getLong("id"),
                HappeningKind.valueOf(row.getString("kind")),
                instant(row, "happened_at"),
                ZoneId.of(row.getString("zone")),
                row.getObject("site_id", Long.class),
                row.getString("site_name"),
                row.getObject("position_id", Long.class),
                row.getString("position_name"),
                row.getObject("unit_id", Long.class),
                row.getString("tag"),
                row.getObject("due_back_on", LocalDate.class),
                row.getString("note"),
                row.getString("reported_name"),
                instant(row, "reported_at"),
                row.getObject("withdrawn_at") == null ? null : instant(row, "withdrawn_at"),
                row.getString("withdrawn_name"),
                row.getString("withdrawn_why"));
    }

    private static Instant instant(ResultSet row, String column) throws SQLException {
        return row.getObject(column, OffsetDateTime.class).toInstant();
    }
}
