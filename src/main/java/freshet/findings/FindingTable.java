package freshet.findings;

import freshet.people.Competence;
import freshet.people.Person;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The rows of findings. */
@Component
class FindingTable {

    private static final String FINDINGS = """
            select f.*, u.tag, s.zone, l.competence, opener.full_name as opened_name, closer.full_name as closed_name
            from finding f
            join pump_unit u on u.id = f.unit_id
            join stand st on st.unit_id = u.id and st.until is null
            join site s on s.id = st.site_id
            left join check_line l on l.id = f.check_line_id
            left join account opener on opener.id = f.opened_by
            left join account closer on closer.id = f.closed_by
            """;

    private final JdbcClient jdbc;

    FindingTable(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Optional<Finding> finding(long id) {
        return jdbc.sql(FINDINGS + "where f.id = ?")
                .param(id)
                .query((row, n) -> finding(row))
                .optional();
    }

    List<Finding> ofUnit(long unitId) {
        return jdbc.sql(FINDINGS + """
                        where f.unit_id = ?
                        order by f.closed_at desc nulls first,
                            case when f.closed_at is null then f.severity end desc, f.opened_at desc, f.id desc""")
                .param(unitId)
                .query((row, n) -> finding(row))
                .list();
    }

    /** Of these units, of a severity at least, oldest first. */
    List<Finding> ofUnits(Collection<Long> unitIds, int leastSeverity) {
        return jdbc.sql(
                        FINDINGS
                                + "where f.unit_id = any(:units) and f.severity >= :severity order by f.unit_id, f.opened_at, f.id")
                .param("units", unitIds.toArray(Long[]::new))
                .param("severity", leastSeverity)
                .query((row, n) -> finding(row))
                .list();
    }

    List<Finding> ofRecord(long recordId) {
        return jdbc.sql(FINDINGS + "where f.record_id = ? order by f.severity desc, f.id")
                .param(recordId)
                .query((row, n) -> finding(row))
                .list();
    }

    long insert(FindingDraft draft, Person by, Instant now) {
        return jdbc.sql("""
                        insert into finding (unit_id, record_id, check_line_id, severity, what, opened_at, opened_by)
                        values (:unit, :record, :line, :severity, :what, :now, :by) returning id""")
                .param("unit", draft.unitId())
                .param("record", draft.recordId())
                .param("line", draft.checkLineId())
                .param("severity", draft.severity())
                .param("what", draft.what().strip())
                .param("now", now.atOffset(ZoneOffset.UTC))
                .param("by", by.id())
                .query(Long.class)
                .single();
    }

    boolean close(long id, int version, String how, Person by, Instant now) {
        return jdbc.sql("""
                        update finding set closed_at = :now, closed_by = :by, closed_how = :how, version = version + 1
                        where id = :id and version = :version and closed_at is null""")
                        .param("now", now.atOffset(ZoneOffset.UTC))
                        .param("by", by.id())
                        .param("how", how)
                        .param("id", id)
                        .param("version", version)
                        .update()
                == 1;
    }

    private static Finding finding(ResultSet row) throws SQLException {
        String competence = row.getString("competence");
        return new Finding(
                row.getLong("id"),
                row.getLong("unit_id"),
                row.getString("tag"),
                ZoneId.of(row.getString("zone")),
                row.getObject("record_id", Long.class),
                row.getObject("check_line_id", Long.class),
                row.getInt("severity"),
                row.getString("what"),
                competence == null ? null : Competence.valueOf(competence),
                instant(row, "opened_at"),
                row.getString("opened_name"),
                row.getObject("closed_at") == null ? null : instant(row, "closed_at"),
                row.getString("closed_name"),
                row.getString("closed_how"),
                row.getInt("version"));
    }

    private static Instant instant(ResultSet row, String column) throws SQLException {
        return row.getObject(column, OffsetDateTime.class).toInstant();
    }
}
