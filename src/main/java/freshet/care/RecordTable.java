package freshet.care;

import freshet.checklists.Verdict;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The rows of signed records: written once and read, never changed. */
@Component
class RecordTable {

    // the days of a record are those of the site where its task was done
    private static final String RECORDS = """
            select r.*, s.zone, n.id as corrected_by_id
            from service_record r
            join task t on t.id = r.task_id
            join site s on s.id = t.site_id
            left join service_record n on n.corrects_id = r.id
            """;

    private final JdbcClient jdbc;
    private final PhotoTable photos;

    RecordTable(JdbcClient jdbc, PhotoTable photos) {
        this.jdbc = jdbc;
        this.photos = photos;
    }

    Optional<ServiceRecord> record(long id) {
        return records("r.id", id).stream().findFirst();
    }

    /** In the order of signing. */
    List<ServiceRecord> ofUnit(long unitId) {
        return records("r.unit_id", unitId);
    }

    private List<ServiceRecord> records(String column, long id) {
        Map<Long, List<RecordLine>> lines = new HashMap<>();
        jdbc.sql("select l.* from record_line l join service_record r on r.id = l.record_id where " + column
                        + " = ? order by l.record_id, l.ordinal")
                .param(id)
                .query(row -> {
                    lines.computeIfAbsent(row.getLong("record_id"), its -> new ArrayList<>())
                            .add(line(row));
                });
        Map<Long, List<RecordPhoto>> shown = photos.ofRecords(column, id);
        return jdbc.sql(RECORDS + "where " + column + " = ? order by r.id")
                .param(id)
                .query((row, n) -> record(
                        row,
                        lines.getOrDefault(row.getLong("id"), List.of()),
                        shown.getOrDefault(row.getLong("id"), List.of())))
                .list();
    }

    /** When the unit's last record was signed, if it has any. */
    Optional<Instant> lastSigned(long unitId) {
        return jdbc.sql("select signed_at from service_record where unit_id = ? order by id desc limit 1")
                .param(unitId)
                .query((row, n) -> instant(row, "signed_at"))
                .optional();
    }

    /** What this person measured with, or anybody on this unit, the latest first. */
    List<String> instruments(long unitId, long personId) {
        return jdbc.sql("""
                        select l.instrument
                        from ((select id from service_record where unit_id = :unit order by ended_at desc limit 20)
                              union (select id from service_record where signed_by = :person order by id desc limit 20)) latest
                        join record_line l on l.record_id = latest.id
                        where l.instrument is not null
                        group by l.instrument
                        order by max(l.record_id) desc, l.instrument
                        limit 12""")
                .param("unit", unitId)
                .param("person", personId)
                .query(String.class)
                .list();
    }

    /** Signs a record into the unit's chain, where one is written at a time; gives its id. */
    long insert(ServiceRecord record) {
        jdbc.sql("select pg_advisory_xact_lock(hashtext('service_record'), cast(? as integer))")
                .param((int) record.unitId())
                .query()
                .singleRow();
        String before = jdbc.sql("select digest from service_record where unit_id = ? order by id desc limit 1")
                .param(record.unitId())
                .query(String.class)
                .optional()
                .orElse(null);
        long id = jdbc.sql("""
                        insert into service_record (corrects_id, task_id, unit_id, checklist_version_id, title, tag, serial, place,
                            started_at, ended_at, signed_at, signed_by, signed_name, correction_why, note, digest)
                        values (:corrects, :task, :unit, :version, :title, :tag, :serial, :place,
                            :started, :ended, :signed, :by, :name, :why, :note, :digest)
                        returning id""")
                .param("corrects", record.correctsId())
                .param("task", record.taskId())
                .param("unit", record.unitId())
                .param("version", record.checklistVersionId())
                .param("title", record.title())
                .param("tag", record.tag())
                .param("serial", record.serial())
                .param("place", record.place())
                .param("started", utc(record.startedAt()))
                .param("ended", utc(record.endedAt()))
                .param("signed", utc(record.signedAt()))
                .param("by", record.signedBy())
                .param("name", record.signedName())
                .param("why", record.correctionWhy())
                .param("note", record.note())
                .param("digest", Digest.of(before, record))
                .query(Long.class)
                .single();
        record.lines().forEach(line -> insert(id, line));
        photos.sign(id, record.photos());
        return id;
    }

    private void insert(long recordId, RecordLine line) {
        jdbc.sql("""
                        insert into record_line (record_id, ordinal, check_line_id, section, question, answer, number, unit, limits,
                            verdict, as_left, instrument)
                        values (:record, :ordinal, :check, :section, :question, :answer, :number, :unit, :limits,
                            :verdict, :asLeft, :instrument)""")
                .param("record", recordId)
                .param("ordinal", line.ordinal())
                .param("check", line.checkLineId())
                .param("section", line.section())
                .param("question", line.question())
                .param("answer", line.answer())
                .param("number", line.number())
                .param("unit", line.unit())
                .param("limits", line.limits())
                .param("verdict", line.verdict().name())
                .param("asLeft", line.asLeft())
                .param("instrument", line.instrument())
                .update();
    }

    private static ServiceRecord record(ResultSet row, List<RecordLine> lines, List<RecordPhoto> photos)
            throws SQLException {
        return new ServiceRecord(
                row.getLong("id"),
                row.getObject("corrects_id", Long.class),
                row.getObject("corrected_by_id", Long.class),
                row.getLong("task_id"),
                row.getLong("unit_id"),
                row.getLong("checklist_version_id"),
                row.getString("title"),
                row.getString("tag"),
                row.getString("serial"),
                row.getString("place"),
                ZoneId.of(row.getString("zone")),
                instant(row, "started_at"),
                instant(row, "ended_at"),
                instant(row, "signed_at"),
                row.getLong("signed_by"),
                row.getString("signed_name"),
                row.getString("correction_why"),
                row.getString("note"),
                row.getString("digest"),
                lines,
                photos);
    }

    private static RecordLine line(ResultSet row) throws SQLException {
        return new RecordLine(
                row.getInt("ordinal"),
                row.getObject("check_line_id", Long.class),
                row.getString("section"),
                row.getString("question"),
                row.getString("answer"),
                row.getObject("number", Double.class),
                row.getString("unit"),
                row.getString("limits"),
                Verdict.valueOf(row.getString("verdict")),
                row.getString("as_left"),
                row.getString("instrument"));
    }

    private static OffsetDateTime utc(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }

    private static Instant instant(ResultSet row, String column) throws SQLException {
        return row.getObject(column, OffsetDateTime.class).toInstant();
    }
}
