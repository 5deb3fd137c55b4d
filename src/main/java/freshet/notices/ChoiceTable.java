package freshet.notices;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The rows of what people chose and of their addresses. */
@Component
class ChoiceTable {

    private static final String CHOICES = """
            select c.*, array(select site_id from notice_site s where s.account_id = c.account_id) as sites
            from notice_choice c join account a on a.id = c.account_id
            """;

    private final JdbcClient jdbc;

    ChoiceTable(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Choices of(long personId) {
        return jdbc.sql(CHOICES + "where c.account_id = ?")
                .param(personId)
                .query((row, n) -> choices(row))
                .optional()
                .orElseGet(() -> Choices.unmade(personId));
    }

    /** Of all who may sign in and have an address that said yes. */
    List<Choices> reachable() {
        return jdbc.sql(CHOICES + "where c.address is not null and a.active order by c.account_id")
                .query((row, n) -> choices(row))
                .list();
    }

    /** False when somebody changed them since this version. */
    boolean change(long personId, int version, ChoicesDraft draft, Instant now) {
        boolean changed = jdbc.sql("""
                        insert into notice_choice (account_id, rhythm, weekday, send_hour, quiet_from, quiet_to, every_site,
                                                   tell_overdue, overdue_days, tell_danger, chosen_at, version)
                        values (:person, :rhythm, :weekday, :hour, :from, :to, :every, :overdue, :days, :danger, :now, 1)
                        on conflict (account_id) do update
                          set rhythm = excluded.rhythm, weekday = excluded.weekday, send_hour = excluded.send_hour,
                              quiet_from = excluded.quiet_from, quiet_to = excluded.quiet_to,
                              every_site = excluded.every_site, tell_overdue = excluded.tell_overdue,
                              overdue_days = excluded.overdue_days, tell_danger = excluded.tell_danger,
                              chosen_at = excluded.chosen_at, version = notice_choice.version + 1
                          where notice_choice.version = :version""")
                        .param("person", personId)
                        .param("rhythm", draft.rhythm().name())
                        .param("weekday", draft.weekday().getValue())
                        .param("hour", draft.sendHour())
                        .param("from", draft.quietFrom())
                        .param("to", draft.quietTo())
                        .param("every", draft.everySite())
                        .param("overdue", draft.tellOverdue())
                        .param("days", draft.overdueDays())
                        .param("danger", draft.tellDanger())
                        .param("now", now.atOffset(ZoneOffset.UTC))
                        .param("version", version)
                        .update()
                == 1;
        if (changed) {
            jdbc.sql("delete from notice_site where account_id = ?")
                    .param(personId)
                    .update();
            jdbc.sql(
                            "insert into notice_site (account_id, site_id) select :person, id from site where id = any(:sites)")
                    .param("person", personId)
                    .param("sites", draft.siteIds().toArray(Long[]::new))
                    .update();
        }
        return changed;
    }

    void ask(long personId, String address, Instant now) {
        jdbc.sql("""
                        insert into notice_choice (account_id, asked_address, asked_at, chosen_at) values (:person, :address, :now, :now)
                        on conflict (account_id) do update
                          set asked_address = excluded.asked_address, asked_at = excluded.asked_at""")
                .param("person", personId)
                .param("address", address)
                .param("now", now.atOffset(ZoneOffset.UTC))
                .update();
    }

    void confirm(long personId) {
        jdbc.sql("""
                        update notice_choice set address = asked_address, asked_address = null, asked_at = null
                        where account_id = ?""").param(personId).update();
    }

    void forgetAddresses(long personId) {
        jdbc.sql("""
                        update notice_choice set address = null, asked_address = null, asked_at = null
                        where account_id = ?""").param(personId).update();
    }

    void stop(long personId, MailKind kind) {
        String off = switch (kind) {
            case DIGEST -> "rhythm = 'NONE'";
            case OVERDUE -> "tell_overdue = false";
            case DANGER -> "tell_danger = false";
            case ADDRESS -> throw new IllegalArgumentException("a question about an address is not stopped");
        };
        jdbc.sql("update notice_choice set version = version + 1, " + off + " where account_id = ?")
                .param(personId)
                .update();
    }

    private static Choices choices(ResultSet row) throws SQLException {
        LocalTime from = row.getObject("quiet_from", LocalTime.class);
        return new Choices(
                row.getLong("account_id"),
                row.getString("address"),
                row.getString("asked_address"),
                instant(row, "asked_at"),
                Rhythm.valueOf(row.getString("rhythm")),
                DayOfWeek.of(row.getInt("weekday")),
                row.getInt("send_hour"),
                from == null ? null : new QuietHours(from, row.getObject("quiet_to", LocalTime.class)),
                row.getBoolean("every_site"),
                Set.of((Long[]) row.getArray("sites").getArray()),
                row.getBoolean("tell_overdue"),
                row.getInt("overdue_days"),
                row.getBoolean("tell_danger"),
                row.getObject("chosen_at", OffsetDateTime.class).toInstant(),
                row.getInt("version"));
    }

    private static @Nullable Instant instant(ResultSet row, String column) throws SQLException {
        OffsetDateTime at = row.getObject(column, OffsetDateTime.class);
        return at == null ? null : at.toInstant();
    }
}
