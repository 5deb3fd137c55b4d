package freshet.notices;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The rows of mail that is owed, and of what became of it. */
@Component
class Outbox {

    /** How long a mail that cannot go out is kept waiting. */
    static final Duration PATIENCE = Duration.ofDays(5);

    private static final Duration REMEMBERED = Duration.ofDays(365);
    private static final Duration REMEMBERED_UNSENT = Duration.ofDays(30);

    private static final String MAILS =
            "select m.*, a.full_name from notice_mail m join account a on a.id = m.account_id ";

    private final JdbcClient jdbc;

    Outbox(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Owes a mail and gives its id; nothing when one about this subject and day is or was owed already. */
    Optional<Long> owe(long personId, MailKind kind, String subject, LocalDate day, ZoneId zone, Instant now) {
        return jdbc.sql("""
                        insert into notice_mail (account_id, kind, subject, day, zone, state, queued_at, not_before)
                        values (:person, :kind, :subject, :day, :zone, 'WAITING', :now, :now)
                        on conflict (account_id, subject, day) do nothing returning id""")
                .param("person", personId)
                .param("kind", kind.name())
                .param("subject", subject)
                .param("day", day)
                .param("zone", zone.getId())
                .param("now", utc(now))
                .query(Long.class)
                .optional();
    }

    /** The mail about this subject that has not gone out yet; it stays so until the end of the transaction. */
    Optional<Long> waiting(long personId, String subject) {
        return jdbc.sql("""
                        select id from notice_mail where account_id = ? and subject = ? and state = 'WAITING'
                        order by id limit 1 for update""").params(personId, subject).query(Long.class).optional();
    }

    /** Lets a mail of this day that was stopped or given up wait once more. */
    void revive(long personId, String subject, LocalDate day, Instant now) {
        jdbc.sql("""
                        update notice_mail set state = 'WAITING', queued_at = :now, not_before = :now
                        where account_id = :person and subject = :subject and day = :day and state in ('STOPPED', 'GIVEN_UP')""")
                .param("now", utc(now))
                .param("person", personId)
                .param("subject", subject)
                .param("day", day)
                .update();
    }

    /** Mail about the same that still waits says less than the one with this id. */
    void replaceOlder(long id) {
        jdbc.sql("""
                        update notice_mail old set state = 'REPLACED' from notice_mail m
                        where m.id = ? and old.account_id = m.account_id and old.subject = m.subject and old.id < m.id
                          and old.state = 'WAITING'""").param(id).update();
    }

    /** The next mail to send, danger first; nobody else gets it until the end of the transaction. */
    Optional<Mail> claim(Instant now) {
        return jdbc.sql(MAILS + """
                        where m.state = 'WAITING' and m.not_before <= ?
                        order by case m.kind when 'DANGER' then 0 when 'ADDRESS' then 1 else 2 end, m.not_before, m.id
                        limit 1 for update of m skip locked""")
                .param(utc(now))
                .query((row, n) -> mail(row))
                .optional();
    }

    void sent(long id, Instant now, String to, String title, String linkDigest) {
        jdbc.sql("""
                        update notice_mail set state = 'SENT', tries = tries + 1, trouble = null, sent_at = ?, sent_to = ?, title = ?,
                                               link_digest = ? where id = ?""").params(utc(now), to, title, linkDigest, id).update();
    }

    void failed(long id, Trouble trouble, Instant nextTry) {
        jdbc.sql("update notice_mail set tries = tries + 1, trouble = ?, not_before = ? where id = ?")
                .params(trouble.name(), utc(nextTry), id)
                .update();
    }

    void postpone(long id, Instant until) {
        jdbc.sql("update notice_mail set not_before = ? where id = ?")
                .params(utc(until), id)
                .update();
    }

    /** A mail that will not go out; late work in one that is no longer wanted counts as never told. */
    void end(long id, MailState state) {
        jdbc.sql("update notice_mail set state = ? where id = ?")
                .params(state.name(), id)
                .update();
        if (state == MailState.STOPPED) {
            jdbc.sql("delete from notice_task where mail_id = ?").param(id).update();
        }
    }

    void tryNow(Instant now) {
        jdbc.sql("update notice_mail set not_before = :now where state = 'WAITING' and not_before > :now")
                .param("now", utc(now))
                .update();
    }

    /** Gives up what waited too long, so that late work is told anew some other day, and forgets what is long over. */
    void tidy(Instant now) {
        jdbc.sql("""
                        with gone as (
                          update notice_mail set state = 'GIVEN_UP' where state = 'WAITING' and queued_at < ? returning id
                        ) delete from notice_task where mail_id in (select id from gone)""").param(utc(now.minus(PATIENCE))).update();
        jdbc.sql("""
                        delete from notice_mail
                        where state <> 'WAITING' and queued_at < case when state = 'SENT' then :sent else :unsent end""")
                .param("sent", utc(now.minus(REMEMBERED)))
                .param("unsent", utc(now.minus(REMEMBERED_UNSENT)))
                .update();
    }

    /** The mail that a secret was sent in. */
    Optional<Mail> linked(String digest) {
        return jdbc.sql(MAILS + "where m.link_digest = ?")
                .param(digest)
                .query((row, n) -> mail(row))
                .optional();
    }

    /** The latest mails, of one person or of all, those that wait first. */
    List<Mail> latest(@Nullable Long personId, int most) {
        return jdbc.sql(MAILS + """
                        where cast(:person as bigint) is null or m.account_id = :person
                        order by m.state <> 'WAITING', m.queued_at desc, m.id desc limit :most""")
                .param("person", personId)
                .param("most", most)
                .query((row, n) -> mail(row))
                .list();
    }

    private static Mail mail(ResultSet row) throws SQLException {
        String trouble = row.getString("trouble");
        OffsetDateTime sentAt = row.getObject("sent_at", OffsetDateTime.class);
        return new Mail(
                row.getLong("id"),
                row.getLong("account_id"),
                row.getString("full_name"),
                MailKind.valueOf(row.getString("kind")),
                row.getString("subject"),
                row.getObject("day", LocalDate.class),
                ZoneId.of(row.getString("zone")),
                MailState.valueOf(row.getString("state")),
                row.getObject("queued_at", OffsetDateTime.class).toInstant(),
                row.getObject("not_before", OffsetDateTime.class).toInstant(),
                row.getInt("tries"),
                trouble == null ? null : Trouble.valueOf(trouble),
                sentAt == null ? null : sentAt.toInstant(),
                row.getString("sent_to"),
                row.getString("title"),
                row.getObject("message_id", UUID.class));
    }

    private static OffsetDateTime utc(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }
}
