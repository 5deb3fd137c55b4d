package freshet.notices;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.mail.javamail.JavaMailSender;
import org.springframework.mail.javamail.JavaMailSenderImpl;
import org.springframework.mail.javamail.MimeMessagePreparator;
import org.springframework.stereotype.Component;
import org.springframework.util.StringUtils;

/** The mail server of this install, if one is set up, and the address that mail comes from. */
@Component
class MailServer {

    private final ObjectProvider<JavaMailSender> senders;
    private final String from;

    MailServer(
            ObjectProvider<JavaMailSender> senders,
            @Value("${freshet.mail-from:}") String from,
            @Value("${spring.mail.username:}") String name,
            OwnAddress own) {
        this.senders = senders;
        String host = own.forLinks().replaceFirst("^\\w+://", "").replaceFirst("[:/].*$", "");
        this.from = !from.isBlank() ? from.strip() : name.contains("@") ? name : "freshet@" + host;
    }

    boolean there() {
        JavaMailSender sender = senders.getIfAvailable();
        return sender != null && !(sender instanceof JavaMailSenderImpl plain && !StringUtils.hasText(plain.getHost()));
    }

    /** Its name, as it is set; empty when there is none or it is known by other means. */
    String name() {
        return there() && senders.getIfAvailable() instanceof JavaMailSenderImpl plain
                ? String.valueOf(plain.getHost())
                : "";
    }

    String from() {
        return from;
    }

    void send(MimeMessagePreparator mail) {
        senders.getObject().send(mail);
    }
}
