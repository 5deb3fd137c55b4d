package freshet.fleet;

import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/** The summary rows: one for each unit in care, none for a retired one. */
@Component
class SummaryTable {

    private static final String PUT = """
            insert into unit_summary (unit_id, readiness, reasons, ready_until, remaining_fraction, expanded_uncertainty,
                                      stated_at_head_m, tested_at, next_due_on, open_tasks)
            values (?, ?, cast(? as jsonb), ?, ?, ?, ?, ?, ?, ?)
            on conflict (unit_id) do update
              set readiness = excluded.readiness, reasons = excluded.reasons, ready_until = excluded.ready_until,
                  remaining_fraction = excluded.remaining_fraction, expanded_uncertainty = excluded.expanded_uncertainty,
                  stated_at_head_m = excluded.stated_at_head_m, tested_at = excluded.tested_at,
                  next_due_on = excluded.next_due_on, open_tasks = excluded.open_tasks
            """;
    private static final int BATCH = 500;

    private final JdbcClient jdbc;
    private final JdbcTemplate batches;
    private final JsonMapper json;

    SummaryTable(JdbcClient jdbc, JdbcTemplate batches, JsonMapper json) {
        this.jdbc = jdbc;
        this.batches = batches;
        this.json = json;
    }

    /** The rows of these units, which nobody else may change until the end: whoever judges later sees the facts of who judged first. */
    Map<Long, Summary> hold(Collection<Long> unitIds) {
        Map<Long, Summary> summaries = new HashMap<>();
        jdbc.sql("select * from unit_summary where unit_id = any(?) order by unit_id for update")
                .param(unitIds.toArray(Long[]::new))
                .query((row, n) -> summary(row))
                .list()
                .forEach(summary -> summaries.put(summary.unitId(), summary));
        return summaries;
    }

    void put(List<Summary> summaries) {
        batches.batchUpdate(PUT, summaries, BATCH, this::fill);
    }

    void remove(Collection<Long> unitIds) {
        jdbc.sql("delete from unit_summary where unit_id = any(?)")
                .param(unitIds.toArray(Long[]::new))
                .update();
    }

    void removeAll() {
        jdbc.sql("delete from unit_summary").update();
    }

    private void fill(PreparedStatement row, Summary summary) throws SQLException {
        row.setLong(1, summary.unitId());
        row.setString(2, summary.readiness().word().name());
        row.setString(3, json.writeValueAsString(summary.readiness().reasons()));
        row.setObject(4, summary.readiness().readyUntil(), Types.DATE);
        row.setObject(5, summary.remainingFraction(), Types.DOUBLE);
        row.setObject(6, summary.expandedUncertainty(), Types.DOUBLE);
        row.setObject(7, summary.statedAtHeadM(), Types.DOUBLE);
        Instant tested = summary.testedAt();
        row.setObject(8, tested == null ? null : tested.atOffset(ZoneOffset.UTC), Types.TIMESTAMP_WITH_TIMEZONE);
        row.setObject(9, summary.nextDueOn(), Types.DATE);
        row.setInt(10, summary.openTasks());
    }

    private Summary summary(ResultSet row) throws SQLException {
        OffsetDateTime tested = row.getObject("tested_at", OffsetDateTime.class);
        return new Summary(
                row.getLong("unit_id"),
                readiness(row),
                row.getObject("remaining_fraction", Double.class),
                row.getObject("expanded_uncertainty", Double.class),
                row.getObject("stated_at_head_m", Double.class),
                tested == null ? null : tested.toInstant(),
                row.getObject("next_due_on", LocalDate.class),
                row.getInt("open_tasks"));
    }

    Readiness readiness(ResultSet row) throws SQLException {
        return new Readiness(
                Word.valueOf(row.getString("readiness")),
                List.of(json.readValue(row.getString("reasons"), Reason[].class)),
                row.getObject("ready_until", LocalDate.class));
    }
}
