package freshet.notices;

import freshet.care.Care;
import freshet.care.Task;
import freshet.measures.Show;
import freshet.measures.UnitSystem;
import freshet.people.NotFound;
import freshet.people.People;
import freshet.people.Person;
import freshet.phrases.Phrases;
import freshet.places.Places;
import freshet.places.Site;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.springframework.context.MessageSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The secret addresses of calendars and what each of them says: all open work of one place. */
@Component
class CalendarFeeds {

    private final Care care;
    private final Places places;
    private final People people;
    private final OwnAddress own;
    private final MessageSource messages;
    private final JdbcClient jdbc;
    private final Clock clock;

    CalendarFeeds(
            Care care,
            Places places,
            People people,
            OwnAddress own,
            MessageSource messages,
            JdbcClient jdbc,
            Clock clock) {
        this.care = care;
        this.places = places;
        this.people = people;
        this.own = own;
        this.messages = messages;
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** Makes an address, in place of the one there may be, and gives its secret. */
    String make(long personId, long siteId) {
        String secret = Secrets.fresh();
        jdbc.sql("""
                        insert into calendar_feed (account_id, site_id, digest, made_at) values (?, ?, ?, ?)
                        on conflict (account_id, site_id) do update
                          set digest = excluded.digest, made_at = excluded.made_at, said_digest = null, said_at = null""").params(personId, siteId, Secrets.digest(secret), now()).update();
        return secret;
    }

    void takeBack(long personId, long siteId) {
        int gone = jdbc.sql("delete from calendar_feed where account_id = ? and site_id = ?")
                .params(personId, siteId)
                .update();
        if (gone == 0) {
            throw new NotFound("calendar", siteId);
        }
    }

    List<CalendarAddress> of(long personId) {
        return jdbc.sql("""
                        select f.site_id, s.name, s.zone, f.made_at from calendar_feed f join site s on s.id = f.site_id
                        where f.account_id = ? order by s.name""")
                .param(personId)
                .query((row, n) -> new CalendarAddress(
                        row.getLong("site_id"),
                        row.getString("name"),
                        ZoneId.of(row.getString("zone")),
                        instant(row, "made_at")))
                .list();
    }

    private record Feed(long personId, long siteId, String saidDigest, Instant saidAt) {}

    /** What the calendar at a secret address says now. */
    CalendarFile read(String secret) {
        Feed feed = jdbc.sql("""
                        select f.* from calendar_feed f join account a on a.id = f.account_id
                        where f.digest = ? and a.active for update of f""")
                .param(Secrets.digest(secret))
                .query((row, n) -> new Feed(
                        row.getLong("account_id"),
                        row.getLong("site_id"),
                        String.valueOf(row.getString("said_digest")),
                        row.getObject("said_at") == null ? Instant.EPOCH : instant(row, "said_at")))
                .optional()
                .orElseThrow(() -> new NotFound("calendar", "at this address"));
        Site site = places.site(feed.siteId());
        Person reader = people.person(feed.personId());
        List<CalendarText.Days> events = events(care.openTasksAt(Set.of(site.id())), reader);
        byte[] bytes = CalendarText.of(say(reader.locale(), "notices.calendar.name", site.name()), events);
        String digest = Secrets.digest(bytes);
        Instant changedAt = feed.saidAt();
        if (!digest.equals(feed.saidDigest())) {
            changedAt = clock.instant();
            jdbc.sql("update calendar_feed set said_digest = ?, said_at = ? where account_id = ? and site_id = ?")
                    .params(digest, changedAt.atOffset(ZoneOffset.UTC), feed.personId(), feed.siteId())
                    .update();
        }
        return new CalendarFile(bytes, digest, changedAt.truncatedTo(ChronoUnit.SECONDS));
    }

    /** What a calendar says of a task. */
    private record Said(Task task, String summary, String place, String words, String address) {

        String digest() {
            return Secrets.digest(String.join("\0", summary, place, words, task.opensOn() + "/" + task.dueOn()));
        }
    }

    private record Revision(long taskId, UUID uid, int sequence, Instant changedAt) {}

    private List<CalendarText.Days> events(List<Task> tasks, Person reader) {
        // what changed is told by the English words, for one task has one sequence at all addresses
        Map<Long, Revision> revisions =
                revisions(tasks.stream().map(task -> said(task, Locale.ENGLISH)).toList());
        List<Said> said =
                tasks.stream().map(task -> said(task, reader.locale())).toList();
        return said.stream()
                .map(each -> {
                    Task task = each.task();
                    Revision revision = Objects.requireNonNull(revisions.get(task.id()));
                    return new CalendarText.Days(
                            revision.uid(),
                            revision.sequence(),
                            revision.changedAt(),
                            task.opensOn(),
                            task.dueOn(),
                            each.summary(),
                            each.place(),
                            each.words(),
                            each.address());
                })
                .toList();
    }

    private Said said(Task task, Locale locale) {
        String place = task.positionName() == null ? task.siteName() : task.siteName() + ", " + task.positionName();
        String address = own.forLinks() + "/tasks/" + task.id();
        Show show = new Show(UnitSystem.US, locale, task.dueOn());
        String words = say(locale, "notices.calendar.words", why(task, show), show.minutes(task.minutes()), address);
        return new Said(task, task.tag() + " " + Phrases.said(locale, task.title()), place, words, address);
    }

    private String why(Task task, Show show) {
        return task.why() == null
                ? ""
                : say(show.locale(), task.why().code(), task.why().arguments(show)) + ".\n";
    }

    /** The sequence of a task grows when something else is said of it than was said last, at whichever address. */
    private Map<Long, Revision> revisions(List<Said> said) {
        Long[] ids = said.stream().map(each -> each.task().id()).toArray(Long[]::new);
        String[] digests = said.stream().map(Said::digest).toArray(String[]::new);
        jdbc.sql("""
                        insert into calendar_event as e (task_id, said_digest, changed_at)
                        select said.task_id, said.digest, :now
                        from unnest(cast(:tasks as bigint[]), cast(:digests as text[])) as said(task_id, digest)
                        left join calendar_event k on k.task_id = said.task_id
                        where k.said_digest is distinct from said.digest
                        order by said.task_id
                        on conflict (task_id) do update
                          set sequence = e.sequence + 1, said_digest = excluded.said_digest, changed_at = excluded.changed_at
                          where e.said_digest <> excluded.said_digest""")
                .param("now", now())
                .param("tasks", ids)
                .param("digests", digests)
                .update();
        return jdbc
                .sql("select * from calendar_event where task_id = any(:tasks)")
                .param("tasks", ids)
                .query((row, n) -> new Revision(
                        row.getLong("task_id"),
                        row.getObject("uid", UUID.class),
                        row.getInt("sequence"),
                        instant(row, "changed_at")))
                .stream()
                .collect(Collectors.toMap(Revision::taskId, Function.identity()));
    }

    private String say(Locale locale, String code, Object... arguments) {
        return messages.getMessage(code, arguments, locale);
    }

    private OffsetDateTime now() {
        return clock.instant().truncatedTo(ChronoUnit.SECONDS).atOffset(ZoneOffset.UTC);
    }

    private static Instant instant(ResultSet row, String column) throws SQLException {
        return row.getObject(column, OffsetDateTime.class).toInstant();
    }
}
