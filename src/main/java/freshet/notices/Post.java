package freshet.notices;

import freshet.people.People;
import freshet.people.Person;
import jakarta.mail.internet.MimeMessage;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Date;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.mail.javamail.MimeMessageHelper;
import org.springframework.stereotype.Component;

/** Brings one mail after another to the mail server; what it does not take is tried again after growing pauses. */
@Component
class Post {

    private static final Logger LOG = LoggerFactory.getLogger(Post.class);

    private static final List<Duration> PAUSES = List.of(
            Duration.ofMinutes(1),
            Duration.ofMinutes(5),
            Duration.ofMinutes(15),
            Duration.ofHours(1),
            Duration.ofHours(3),
            Duration.ofHours(6),
            Duration.ofHours(12));

    private final Outbox outbox;
    private final ChoiceTable choices;
    private final Letters letters;
    private final LetterPaper paper;
    private final MailServer server;
    private final People people;
    private final Clock clock;

    Post(
            Outbox outbox,
            ChoiceTable choices,
            Letters letters,
            LetterPaper paper,
            MailServer server,
            People people,
            Clock clock) {
        this.outbox = outbox;
        this.choices = choices;
        this.letters = letters;
        this.paper = paper;
        this.server = server;
        this.people = people;
        this.clock = clock;
    }

    /**
     * Deals with the next mail, which stays claimed until the end of the transaction. False when there is none, or when the server
     * would take no other mail now either.
     */
    boolean sendNext() {
        if (!server.there()) {
            return false;
        }
        Instant now = clock.instant();
        Optional<Mail> claimed = outbox.claim(now);
        claimed.ifPresent(mail -> LOG.debug("mail {} about {} is claimed", mail.id(), mail.subject()));
        return claimed.isPresent() && dealWith(claimed.get(), now);
    }

    private boolean dealWith(Mail mail, Instant now) {
        Person reader = people.person(mail.personId());
        Choices its = choices.of(mail.personId());
        if (!its.wants(mail.kind(), reader) || !stillAsked(mail, its)) {
            outbox.end(mail.id(), MailState.STOPPED);
            return true;
        }
        boolean mayWait = mail.kind() == MailKind.DIGEST || mail.kind() == MailKind.OVERDUE;
        if (mayWait && its.quietAt(now, mail.zone())) {
            outbox.postpone(mail.id(), Objects.requireNonNull(its.quiet()).over(now, mail.zone()));
            return true;
        }
        try {
            LocaleContextHolder.setLocale(reader.locale());
            send(mail, reader, its, now);
            return true;
        } catch (RuntimeException failure) {
            Trouble trouble = Trouble.of(failure);
            LOG.warn("mail {} about {} did not go out: {}", mail.id(), mail.subject(), trouble, failure);
            outbox.failed(mail.id(), trouble, now.plus(PAUSES.get(Math.min(mail.tries(), PAUSES.size() - 1))));
            return !trouble.ofTheServer();
        } finally {
            LocaleContextHolder.resetLocaleContext();
        }
    }

    /** A question is asked at the address that was typed last. */
    private static boolean stillAsked(Mail mail, Choices its) {
        return mail.kind() != MailKind.ADDRESS || mail.subject().equals(question(its.askedAddress()));
    }

    /** The subject of a question about an address. */
    static String question(@Nullable String address) {
        return "address:" + address;
    }

    private void send(Mail mail, Person reader, Choices its, Instant now) {
        String secret = Secrets.fresh();
        boolean question = mail.kind() == MailKind.ADDRESS;
        Optional<Letter> letter = letters.letter(mail, reader, its, secret);
        if (letter.isEmpty()) {
            outbox.end(mail.id(), MailState.NOTHING);
            return;
        }
        String to = Objects.requireNonNull(question ? its.askedAddress() : its.address());
        String text = paper.text(letter.get());
        String html = paper.html(letter.get());
        server.send(message -> {
            MimeMessageHelper helper = new MimeMessageHelper(message, true, "UTF-8");
            helper.setFrom(server.from(), "Freshet");
            helper.setTo(to);
            helper.setSubject(letter.get().title());
            helper.setSentDate(Date.from(now));
            helper.setText(text, html);
            headers(message, mail, question ? null : letters.stopAddress(secret));
        });
        outbox.sent(mail.id(), now, to, letter.get().title(), Secrets.digest(secret));
    }

    private void headers(MimeMessage message, Mail mail, @Nullable String stop) throws jakarta.mail.MessagingException {
        // the same for every try, so that a mail which arrives twice after a crash is known to be one
        String host = server.from().substring(server.from().indexOf('@') + 1);
        message.setHeader("Message-ID", "<" + mail.messageId() + "@" + host + ">");
        // RFC 3834: no answers from absent readers
        message.setHeader("Auto-Submitted", "auto-generated");
        if (stop != null) {
            // RFC 2369 and RFC 8058: the reader's mail program can stop it with one press
            message.setHeader("List-Unsubscribe", "<" + stop + ">");
            message.setHeader("List-Unsubscribe-Post", "List-Unsubscribe=One-Click");
        }
    }
}
