package freshet.notices;

import freshet.findings.Findings;
import freshet.people.NotFound;
import freshet.people.People;
import freshet.people.Person;
import freshet.people.Stale;
import freshet.places.Places;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionOperations;

/** The door to what people are told without asking: mail by choice, mail about danger and late work, and calendars. */
@Service
@Transactional
public class Notices {

    /** A question about an address ends after so long. */
    static final Duration QUESTION = Duration.ofDays(3);

    private static final int MAILS_SHOWN = 60;

    private final ChoiceTable choices;
    private final Outbox outbox;
    private final Round round;
    private final Post post;
    private final CalendarFeeds calendars;
    private final MailServer server;
    private final Findings findings;
    private final Places places;
    private final People people;
    private final TransactionOperations transactions;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    Notices(
            ChoiceTable choices,
            Outbox outbox,
            Round round,
            Post post,
            CalendarFeeds calendars,
            MailServer server,
            Findings findings,
            Places places,
            People people,
            TransactionOperations transactions,
            ApplicationEventPublisher events,
            Clock clock) {
        this.choices = choices;
        this.outbox = outbox;
        this.round = round;
        this.post = post;
        this.calendars = calendars;
        this.server = server;
        this.findings = findings;
        this.places = places;
        this.people = people;
        this.transactions = transactions;
        this.events = events;
        this.clock = clock;
    }

    @Transactional(readOnly = true)
    public Choices choices(long personId) {
        return choices.of(personId);
    }

    /** Chooses anew, unless somebody did since the given version. */
    public void choose(Person me, int version, ChoicesDraft draft) {
        ChoiceChecks.check(draft);
        if (!choices.change(me.id(), version, draft, clock.instant())) {
            throw new Stale("choices", me.id());
        }
        people.note(me, "notices chosen", "person:" + me.id(), draft.toString());
    }

    /** Asks whether mail is welcome at an address, by one mail a day to it; until it says yes, mail goes where it went. */
    public void askAddress(Person me, String typed) {
        String address = ChoiceChecks.address(typed);
        Instant now = clock.instant();
        LocalDate today = LocalDate.ofInstant(now, ZoneOffset.UTC);
        choices.ask(me.id(), address, now);
        if (outbox.owe(me.id(), MailKind.ADDRESS, Post.question(address), today, ZoneOffset.UTC, now)
                .isEmpty()) {
            outbox.revive(me.id(), Post.question(address), today, now);
        }
        people.note(me, "address asked", "person:" + me.id(), address);
        events.publishEvent(new MailWaits());
    }

    /** Takes all addresses of a person away; no mail goes out to them any more. */
    public void forgetAddresses(Person me) {
        choices.forgetAddresses(me.id());
        people.note(me, "address forgotten", "person:" + me.id(), null);
    }

    /** Which address a secret in a mail asks about, and whose. */
    @Transactional(readOnly = true)
    public Choices asked(String secret) {
        return outbox.linked(Secrets.digest(secret))
                .filter(mail -> mail.kind() == MailKind.ADDRESS)
                .map(mail -> Map.entry(mail, choices.of(mail.personId())))
                .filter(each -> each.getKey()
                        .subject()
                        .equals(Post.question(each.getValue().askedAddress())))
                .map(Map.Entry::getValue)
                .filter(its -> its.askedSince(clock.instant().minus(QUESTION)))
                .orElseThrow(() -> new NotFound("question", "behind this link"));
    }

    /** The address says yes. */
    public Choices confirm(String secret) {
        Choices asked = asked(secret);
        Person person = people.person(asked.personId());
        choices.confirm(person.id());
        people.note(person, "address confirmed", "person:" + person.id(), asked.askedAddress());
        return choices.of(person.id());
    }

    /** The mail whose link this is, if it is of a kind that can be stopped. */
    @Transactional(readOnly = true)
    public Mail mailStoppedBy(String secret) {
        return outbox.linked(Secrets.digest(secret))
                .filter(mail -> mail.kind() != MailKind.ADDRESS)
                .orElseThrow(() -> new NotFound("mail", "behind this link"));
    }

    /** Stops all mail of the kind of the one whose link this is; doing it again changes nothing. */
    public Mail stop(String secret) {
        Mail mail = mailStoppedBy(secret);
        choices.stop(mail.personId(), mail.kind());
        people.note(
                people.person(mail.personId()),
                "notices stopped",
                "person:" + mail.personId(),
                mail.kind().name());
        return mail;
    }

    /** Owes everybody the mail that is due now, gives up what waited too long, and forgets what is long over; idempotent. */
    public void goRound() {
        round.digests();
        round.lateWork();
        outbox.tidy(clock.instant());
    }

    /** Owes the owners a mail about a finding that can hurt somebody. */
    public void tellDanger(long findingId) {
        if (round.danger(findings.finding(findingId))) {
            events.publishEvent(new MailWaits());
        }
    }

    /** Sends what waits, each mail in its own transaction, until nothing is left or the server takes nothing; any number may do so at once. */
    @Transactional(propagation = Propagation.NOT_SUPPORTED)
    public void sendAll() {
        while (Boolean.TRUE.equals(transactions.execute(status -> post.sendNext()))) {
            // the next one
        }
    }

    /** Lets all that waits go out now. */
    public void tryNow() {
        outbox.tryNow(clock.instant());
        events.publishEvent(new MailWaits());
    }

    /** How mail goes out, and the latest mails of this person, an owner sees everybody's. */
    @Transactional(readOnly = true)
    public Mailbag mailbag(Person me) {
        boolean anyOwner = choices.reachable().stream()
                .anyMatch(each -> each.wants(MailKind.DANGER, people.person(each.personId())));
        return new Mailbag(
                server.there(),
                server.name(),
                server.from(),
                anyOwner,
                outbox.latest(me.owner() ? null : me.id(), MAILS_SHOWN));
    }

    /** Makes a secret calendar address of a place, in place of the one there may be; the secret is said this once. */
    public String makeCalendar(Person me, long siteId) {
        String name = places.site(siteId).name();
        String secret = calendars.make(me.id(), siteId);
        people.note(me, "calendar address made", "person:" + me.id(), name);
        return secret;
    }

    public void takeBackCalendar(Person me, long siteId) {
        calendars.takeBack(me.id(), siteId);
        people.note(
                me,
                "calendar address taken back",
                "person:" + me.id(),
                places.site(siteId).name());
    }

    @Transactional(readOnly = true)
    public List<CalendarAddress> calendars(long personId) {
        return calendars.of(personId);
    }

    /** What the calendar at a secret address says now. */
    public CalendarFile calendar(String secret) {
        return calendars.read(secret);
    }
}
