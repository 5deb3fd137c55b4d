package freshet.findings;

import freshet.people.Competence;
import freshet.people.Person;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
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
            select f.*, u.tag, s.zone, l.competence, opener.full_name as opened_name, closer.full_name as closed_name,
                   w.severity as waiver_severity, w.why as waiver_why, w.decided_by, w.until as waiver_until, w.put_off_at, w.put_off_name
            from finding f
            join pump_unit u on u.id = f.unit_id
            join stand st on st.unit_id = u.id and st.until is null
            join site s on s.id = st.site_id
            left join check_line l on l.id = f.check_line_id
            left join account opener on opener.id = f.opened_by
            left join account closer on closer.id = f.closed_by
            left join lateral (select v.*, waiving.full_name as put_off_name
                               from waiver v join account waiving on waiving.id = v.put_off_by
                               where v.finding_id = f.id order by v.id desc limit 1) w on w.severity >= f.severity
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

    List<Finding> open(Collection<Long> unitIds) {
        return jdbc.sql(FINDINGS + "where f.closed_at is null and f.unit_id = any(?) order by f.id")
                .param(unitIds.toArray(Long[]::new))
                .query((row, n) -> finding(row))
                .list();
    }

    /** All that are open, worst first. */
    List<Finding> open() {
        return jdbc.sql(FINDINGS + "where f.closed_at is null order by f.severity desc, f.opened_at, f.id")
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
                        insert into finding (unit_id, record_id, check_line_id, severity, what, mode, cause, opened_at, opened_by)
                        values (:unit, :record, :line, :severity, :what, :mode, :cause, :now, :by) returning id""")
                .param("unit", draft.unitId())
                .param("record", draft.recordId())
                .param("line", draft.checkLineId())
                .param("severity", draft.severity())
                .param("what", draft.what().strip())
                .param("mode", draft.mode() == null ? null : draft.mode().code())
                .param("cause", draft.cause() == null ? null : draft.cause().name())
                .param("now", now.atOffset(ZoneOffset.UTC))
                .param("by", by.id())
                .query(Long.class)
                .single();
    }

    /** Whether it was still open, and as it was when the form was opened. */
    boolean judge(long id, int version, Judging judging) {
        return jdbc.sql("""
                        update finding set mode = :mode, cause = :cause, severity = :severity, version = version + 1
                        where id = :id and version = :version and closed_at is null""")
                        .param(
                                "mode",
                                judging.mode() == null ? null : judging.mode().code())
                        .param(
                                "cause",
                                judging.cause() == null ? null : judging.cause().name())
                        .param("severity", judging.severity())
                        .param("id", id)
                        .param("version", version)
                        .update()
                == 1;
    }

    void insert(long findingId, int was, Judging judging, Person by, Instant now) {
        jdbc.sql("""
                        insert into finding_severity (finding_id, was, became, why, changed_at, changed_by)
                        values (:finding, :was, :became, :why, :now, :by)""")
                .param("finding", findingId)
                .param("was", was)
                .param("became", judging.severity())
                .param("why", judging.why())
                .param("now", now.atOffset(ZoneOffset.UTC))
                .param("by", by.id())
                .update();
    }

    List<SeverityChange> severities(long findingId) {
        return jdbc.sql("""
                        select s.*, a.full_name from finding_severity s join account a on a.id = s.changed_by
                        where s.finding_id = ? order by s.id desc""")
                .param(findingId)
                .query((row, n) -> new SeverityChange(
                        row.getInt("was"),
                        row.getInt("became"),
                        row.getString("why"),
                        instant(row, "changed_at"),
                        row.getString("full_name")))
                .list();
    }

    /** The lowest severity that the line which made it allows; 0 when it is free. */
    int held(long id) {
        return jdbc.sql("""
                        select coalesce(max(l.held_severity), 0) from finding f join check_line l on l.id = f.check_line_id
                        where f.id = ?""").param(id).query(Integer.class).single();
    }

    /** Whether it was still open, and as it was when the form was opened. */
    boolean putOff(long id, int version, int severity, WaiverDraft draft, Person by, Instant now) {
        int open = jdbc.sql(
                        "update finding set version = version + 1 where id = ? and version = ? and closed_at is null")
                .params(id, version)
                .update();
        if (open == 1) {
            jdbc.sql("""
                            insert into waiver (finding_id, severity, why, decided_by, until, put_off_at, put_off_by)
                            values (:finding, :severity, :why, :decided, :until, :now, :by)""")
                    .param("finding", id)
                    .param("severity", severity)
                    .param("why", draft.why())
                    .param("decided", draft.decidedBy())
                    .param("until", draft.until())
                    .param("now", now.atOffset(ZoneOffset.UTC))
                    .param("by", by.id())
                    .update();
        }
        return open == 1;
    }

    /** Newest first. */
    List<Waiver> waivers(long findingId) {
        return jdbc.sql("""
                        select w.severity as waiver_severity, w.why as waiver_why, w.decided_by, w.until as waiver_until, w.put_off_at,
                               a.full_name as put_off_name
                        from waiver w join account a on a.id = w.put_off_by where w.finding_id = ? order by w.id desc""").param(findingId).query((row, n) -> waiver(row)).list();
    }

    private static Waiver waiver(ResultSet row) throws SQLException {
        return new Waiver(
                row.getInt("waiver_severity"),
                row.getString("waiver_why"),
                row.getString("decided_by"),
                row.getObject("waiver_until", LocalDate.class),
                instant(row, "put_off_at"),
                row.getString("put_off_name"));
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
        String mode = row.getString("mode");
        return new Finding(
                row.getLong("id"),
                row.getLong("unit_id"),
                row.getString("tag"),
                ZoneId.of(row.getString("zone")),
                row.getObject("record_id", Long.class),
                row.getObject("check_line_id", Long.class),
                row.getInt("severity"),
                row.getString("what"),
                mode == null ? null : FailureMode.ofCode(mode),
                Choices.one(Cause.class, row.getString("cause")),
                competence == null ? null : Competence.valueOf(competence),
                instant(row, "opened_at"),
                row.getString("opened_name"),
                row.getObject("closed_at") == null ? null : instant(row, "closed_at"),
                row.getString("closed_name"),
                row.getString("closed_how"),
                row.getObject("waiver_until") == null ? null : waiver(row),
                row.getInt("version"));
    }

    private static Instant instant(ResultSet row, String column) throws SQLException {
        return row.getObject(column, OffsetDateTime.class).toInstant();
    }
}
