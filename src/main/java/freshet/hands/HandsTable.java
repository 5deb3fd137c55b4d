package freshet.hands;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The rows of hands, and what it reads of the work: open tasks, and what was signed lately. */
@Component
class HandsTable {

    // each site's own today
    private static final String TODAY =
            "cross join lateral (select cast(cast(:now as timestamptz) at time zone s.zone as date) as today) d ";

    private final JdbcClient jdbc;
    private final Clock clock;

    HandsTable(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    List<Hand> hands() {
        Map<Long, Set<LocalDate>> off = new HashMap<>();
        jdbc.sql("select * from hand_off").query(row -> {
            off.computeIfAbsent(row.getLong("person_id"), id -> new HashSet<>())
                    .add(row.getObject("monday", LocalDate.class));
        });
        return jdbc.sql("""
                        select a.id, a.full_name, coalesce(h.minutes_a_week, 0) as minutes, coalesce(h.version, -1) as version
                        from account a left join hand h on h.person_id = a.id where a.active order by a.full_name, a.id""")
                .query((row, n) -> new Hand(
                        row.getLong("id"),
                        row.getString("full_name"),
                        row.getInt("minutes"),
                        Set.copyOf(off.getOrDefault(row.getLong("id"), Set.of())),
                        row.getInt("version")))
                .list();
    }

    /** Whether it was written: not when somebody else did since that version. */
    boolean write(long personId, int version, int minutes, Set<LocalDate> weeksOff) {
        boolean written = jdbc.sql("""
                        insert into hand (person_id, minutes_a_week) values (:person, :minutes)
                        on conflict (person_id) do update
                          set minutes_a_week = excluded.minutes_a_week, version = hand.version + 1 where hand.version = :version""")
                        .param("person", personId)
                        .param("minutes", minutes)
                        .param("version", version)
                        .update()
                == 1;
        if (written) {
            jdbc.sql("delete from hand_off where person_id = ?").param(personId).update();
            weeksOff.forEach(monday -> jdbc.sql("insert into hand_off (person_id, monday) values (?, ?)")
                    .params(personId, monday)
                    .update());
        }
        return written;
    }

    FindingsShare findings() {
        return jdbc.sql("select findings_percent, version from hand_setting")
                .query((row, n) -> new FindingsShare(row.getInt(1), row.getInt(2)))
                .optional()
                .orElse(FindingsShare.USUAL);
    }

    boolean write(int version, int percent) {
        return jdbc.sql("""
                        insert into hand_setting (findings_percent) values (:percent)
                        on conflict (id) do update
                          set findings_percent = excluded.findings_percent, version = hand_setting.version + 1
                          where hand_setting.version = :version""").param("percent", percent).param("version", version).update() == 1;
    }

    /** The earliest today among our sites. */
    LocalDate today() {
        return jdbc
                .sql("select min(d.today) from site s " + TODAY)
                .param("now", clock.instant().atOffset(ZoneOffset.UTC))
                .query((row, n) -> row.getObject(1, LocalDate.class))
                .list()
                .stream()
                .filter(day -> day != null)
                .findFirst()
                .orElse(LocalDate.now(clock));
    }

    /** All open tasks whose days have begun or begin within half a year. */
    List<Work> open(LocalDate until) {
        return jdbc.sql("""
                        select t.*, u.tag, s.name as site_name from task t
                        join pump_unit u on u.id = t.unit_id join site s on s.id = t.site_id
                        where t.state = 'OPEN' and t.opens_on <= :until""").param("until", until).query((row, n) -> work(row)).list();
    }

    private static Work work(ResultSet row) throws SQLException {
        return new Work(
                row.getLong("id"),
                row.getLong("unit_id"),
                row.getString("tag"),
                row.getString("title"),
                row.getLong("site_id"),
                row.getString("site_name"),
                row.getObject("opens_on", LocalDate.class),
                row.getObject("due_on", LocalDate.class),
                row.getInt("minutes"));
    }

    /** The planned minutes of what was done in the seven days that ended so many days ago, by the days of its sites. */
    int signedMinutes(int daysAgo) {
        return jdbc.sql("""
                        select coalesce(sum(t.minutes), 0) from service_record r
                        join task t on t.id = r.task_id join site s on s.id = t.site_id
                        """ + TODAY + """
                        where r.corrects_id is null
                          and cast(r.ended_at at time zone s.zone as date) between d.today - :ago - 6 and d.today - :ago""")
                .param("now", clock.instant().atOffset(ZoneOffset.UTC))
                .param("ago", daysAgo)
                .query(Integer.class)
                .single();
    }
}
