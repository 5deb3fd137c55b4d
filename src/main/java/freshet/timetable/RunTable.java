package freshet.timetable;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.quartz.JobKey;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** One row for each run, and for each zone of a local one: how it went the last time. */
@Component
class RunTable {

    private final JdbcClient jdbc;
    private final Clock clock;

    RunTable(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    record Key(String room, String name, String zone) {

        static Key of(JobKey run, String zone) {
            return new Key(run.getGroup(), run.getName(), zone);
        }

        JobKey run() {
            return JobKey.jobKey(name, room);
        }
    }

    void began(Key run, Instant dueAt, String node) {
        jdbc.sql("""
                        insert into run (room, name, zone, due_at, began_at, node) values (:room, :name, :zone, :due, :now, :node)
                        on conflict (room, name, zone) do update
                          set due_at = excluded.due_at, began_at = excluded.began_at, ended_at = null, trouble = null,
                              node = excluded.node""")
                .param("room", run.room())
                .param("name", run.name())
                .param("zone", run.zone())
                .param("due", at(dueAt))
                .param("now", at(clock.instant()))
                .param("node", node)
                .update();
    }

    /** A run that ended, well when there is no trouble. */
    void ended(Key run, @Nullable Trouble trouble) {
        jdbc.sql("""
                        update run set ended_at = :now, trouble = :trouble,
                          done_at = case when cast(:trouble as text) is null then :now else done_at end
                        where room = :room and name = :name and zone = :zone""")
                .param("now", at(clock.instant()))
                .param("trouble", trouble == null ? null : trouble.name())
                .param("room", run.room())
                .param("name", run.name())
                .param("zone", run.zone())
                .update();
    }

    /** Forgets the runs of zones where no site is left. */
    void keepOnly(Collection<String> zones) {
        jdbc.sql("delete from run where zone <> '' and zone <> all(?)")
                .param(zones.toArray(String[]::new))
                .update();
    }

    List<Key> failed() {
        return jdbc.sql("select room, name, zone from run where trouble is not null")
                .query((row, n) -> new Key(row.getString(1), row.getString(2), row.getString(3)))
                .list();
    }

    Map<Key, LastRun> all() {
        Map<Key, LastRun> all = new HashMap<>();
        jdbc.sql("select * from run").query(row -> {
            all.put(new Key(row.getString("room"), row.getString("name"), row.getString("zone")), last(row));
        });
        return all;
    }

    private static LastRun last(ResultSet row) throws SQLException {
        String trouble = row.getString("trouble");
        return new LastRun(
                row.getObject("due_at", OffsetDateTime.class).toInstant(),
                row.getObject("began_at", OffsetDateTime.class).toInstant(),
                instant(row, "ended_at"),
                trouble == null ? null : Trouble.valueOf(trouble),
                instant(row, "done_at"),
                row.getString("node"));
    }

    private static OffsetDateTime at(Instant instant) {
        return instant.atOffset(ZoneOffset.UTC);
    }

    private static @Nullable Instant instant(ResultSet row, String column) throws SQLException {
        OffsetDateTime at = row.getObject(column, OffsetDateTime.class);
        return at == null ? null : at.toInstant();
    }
}
