package freshet.notices;

import freshet.findings.Finding;
import freshet.people.People;
import freshet.people.Person;
import freshet.places.Places;
import freshet.places.Site;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Finds out what mail is owed and owes it; going round again owes nothing twice. */
@Component
class Round {

    // each site's own today; what was told once for its day is not told again
    private static final String LATE = """
            select t.id, t.due_on, s.zone from task t
            join site s on s.id = t.site_id
            cross join lateral (select cast(cast(:now as timestamptz) at time zone s.zone as date) as today) d
            where t.state = 'OPEN' and d.today - t.due_on - t.grace_days > :days
              and not exists (select 1 from notice_task n
                              where n.account_id = :person and n.task_id = t.id and n.due_on = t.due_on)
            order by s.zone, t.id
            """;

    private final ChoiceTable choices;
    private final Outbox outbox;
    private final Places places;
    private final People people;
    private final JdbcClient jdbc;
    private final Clock clock;

    Round(ChoiceTable choices, Outbox outbox, Places places, People people, JdbcClient jdbc, Clock clock) {
        this.choices = choices;
        this.outbox = outbox;
        this.places = places;
        this.people = people;
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** One digest a person and zone: its places are told together, for their hour comes at once. */
    void digests() {
        Instant now = clock.instant();
        List<Site> sites = places.sites();
        for (Choices each : choices.reachable()) {
            Set<ZoneId> zones = sites.stream()
                    .filter(site -> each.covers(site.id()))
                    .map(Site::zone)
                    .collect(Collectors.toCollection(LinkedHashSet::new));
            for (ZoneId zone : zones) {
                if (!each.quietAt(now, zone)) {
                    each.digestDay(now, zone)
                            .flatMap(day ->
                                    outbox.owe(each.personId(), MailKind.DIGEST, "digest:" + zone, day, zone, now))
                            .ifPresent(outbox::replaceOlder);
                }
            }
        }
    }

    private record Late(long taskId, LocalDate dueOn, ZoneId zone) {

        static Late of(ResultSet row, int n) throws SQLException {
            return new Late(
                    row.getLong("id"), row.getObject("due_on", LocalDate.class), ZoneId.of(row.getString("zone")));
        }
    }

    /** Tells owners of work that is late by more days than each wants to wait, at all places; each task once. */
    void lateWork() {
        Instant now = clock.instant();
        for (Choices each : choices.reachable()) {
            if (each.wants(MailKind.OVERDUE, people.person(each.personId()))) {
                Map<ZoneId, List<Late>> late = jdbc
                        .sql(LATE)
                        .param("now", now.atOffset(ZoneOffset.UTC))
                        .param("days", each.overdueDays())
                        .param("person", each.personId())
                        .query(Late::of)
                        .stream()
                        .collect(Collectors.groupingBy(Late::zone, LinkedHashMap::new, Collectors.toList()));
                late.forEach((zone, its) -> lateWork(each, zone, its, now));
            }
        }
    }

    private void lateWork(Choices owner, ZoneId zone, List<Late> late, Instant now) {
        if (owner.quietAt(now, zone)) {
            return;
        }
        String subject = "overdue:" + zone;
        Optional<Long> mail = outbox.waiting(owner.personId(), subject)
                .or(() -> outbox.owe(
                        owner.personId(), MailKind.OVERDUE, subject, LocalDate.ofInstant(now, zone), zone, now));
        // one went out today already: the rest is told tomorrow
        mail.ifPresent(id -> late.forEach(each -> jdbc.sql("""
                        insert into notice_task (account_id, task_id, due_on, mail_id) values (?, ?, ?, ?)
                        on conflict do nothing""")
                .params(owner.personId(), each.taskId(), each.dueOn(), id)
                .update()));
    }

    /** Owes all owners who want it a mail about a danger; true when anybody is owed one. */
    boolean danger(Finding finding) {
        Instant now = clock.instant();
        boolean any = false;
        for (Choices each : choices.reachable()) {
            Person person = people.person(each.personId());
            if (each.wants(MailKind.DANGER, person)) {
                LocalDate day = LocalDate.ofInstant(now, finding.zone());
                any |= outbox.owe(person.id(), MailKind.DANGER, "finding:" + finding.id(), day, finding.zone(), now)
                        .isPresent();
            }
        }
        return any;
    }
}
