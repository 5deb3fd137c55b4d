package freshet.notices;

import com.icegreen.greenmail.base.GreenMailOperations;
import freshet.people.Person;
import jakarta.mail.BodyPart;
import jakarta.mail.MessagingException;
import jakarta.mail.Multipart;
import jakarta.mail.Part;
import jakarta.mail.internet.MimeMessage;
import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.springframework.mail.javamail.JavaMailSenderImpl;
import org.springframework.stereotype.Component;

/** A real mail server for the tests of mail, and mail as the person reads it who gets it. */
@Component
class MailYard {

    private final JavaMailSenderImpl sender;
    private final Notices notices;

    MailYard(JavaMailSenderImpl sender, Notices notices) {
        this.sender = sender;
        this.notices = notices;
    }

    /** A mail as it arrived: its headers, and what each of its two texts says. */
    record Arrived(MimeMessage message, String to, String title, String text, String html) {

        static Arrived of(MimeMessage message) {
            try {
                return new Arrived(
                        message,
                        message.getAllRecipients()[0].toString(),
                        message.getSubject(),
                        content(message, "text/plain").replace("\r\n", "\n"),
                        content(message, "text/html"));
            } catch (MessagingException | IOException unreadable) {
                throw new IllegalStateException(unreadable);
            }
        }

        private static String content(Part part, String type) throws MessagingException, IOException {
            if (part.isMimeType(type)) {
                return (String) part.getContent();
            }
            StringBuilder found = new StringBuilder();
            if (part.getContent() instanceof Multipart several) {
                for (int i = 0; i < several.getCount(); i++) {
                    BodyPart each = several.getBodyPart(i);
                    found.append(content(each, type));
                }
            }
            return found.toString();
        }

        String header(String name) {
            try {
                return String.join(" | ", message.getHeader(name));
            } catch (MessagingException unreadable) {
                throw new IllegalStateException(unreadable);
            }
        }

        /** What follows this path in a link of the text. */
        String secretAfter(String path) {
            Matcher link = Pattern.compile(Pattern.quote(path) + "([\\w-]{43})(?:\\s|$)")
                    .matcher(text);
            if (!link.find()) {
                throw new AssertionError("no link to " + path + " in:\n" + text);
            }
            return link.group(1);
        }

        String stopSecret() {
            return secretAfter("/notices/stop/");
        }
    }

    /** From now on mail goes to this server. */
    void use(GreenMailOperations server) {
        sender.setHost("127.0.0.1");
        sender.setPort(server.getSmtp().getPort());
    }

    /** All that has arrived, in the order of arrival. */
    static List<Arrived> arrived(GreenMailOperations server) {
        return Arrays.stream(server.getReceivedMessages()).map(Arrived::of).toList();
    }

    static Arrived only(GreenMailOperations server) {
        List<Arrived> all = arrived(server);
        if (all.size() != 1) {
            throw new AssertionError(
                    "not one mail but " + all.stream().map(Arrived::title).toList());
        }
        return all.get(0);
    }

    /** Gives a person an address that said yes to its question; the question is not kept. */
    void reach(Person person, String address, GreenMailOperations server) {
        use(server);
        int before = server.getReceivedMessages().length;
        notices.askAddress(person, address);
        await(() -> server.getReceivedMessages().length > before
                && notices.mailbag(person).waiting() == 0);
        notices.confirm(arrived(server).get(before).secretAfter("/notices/confirm/"));
        try {
            server.purgeEmailFromAllMailboxes();
        } catch (com.icegreen.greenmail.store.FolderException unpurged) {
            throw new IllegalStateException(unpurged);
        }
    }

    /** Waits for what another thread does. */
    static void await(BooleanSupplier done) {
        for (int i = 0; i < 400 && !done.getAsBoolean(); i++) {
            try {
                Thread.sleep(25);
            } catch (InterruptedException over) {
                Thread.currentThread().interrupt();
            }
        }
        if (!done.getAsBoolean()) {
            throw new AssertionError("not done after ten seconds");
        }
    }

    /** Chooses a digest every day at six, all places, and no quiet hours. */
    void wantDaily(Person person) {
        want(person, daily(null, null));
    }

    void want(Person person, ChoicesDraft draft) {
        notices.choose(person, notices.choices(person.id()).version(), draft);
    }

    static ChoicesDraft daily(java.time.LocalTime quietFrom, java.time.LocalTime quietTo) {
        return new ChoicesDraft(
                Rhythm.DAILY,
                java.time.DayOfWeek.MONDAY,
                6,
                quietFrom,
                quietTo,
                true,
                java.util.Set.of(),
                true,
                7,
                true);
    }

    /** Goes round and sends, as the jobs do. */
    void work() {
        notices.goRound();
        notices.sendAll();
    }
}
