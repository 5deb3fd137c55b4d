package freshet;

import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.mail.javamail.JavaMailSenderImpl;

/** The way to the mail server of the tests: before each test none is set up; a test that has one gives it host and port. */
@TestConfiguration(proxyBeanMethods = false)
public class TestMail {

    @Bean
    JavaMailSenderImpl testMailSender() {
        JavaMailSenderImpl sender = new JavaMailSenderImpl();
        sender.getJavaMailProperties().setProperty("mail.smtp.connectiontimeout", "5000");
        sender.getJavaMailProperties().setProperty("mail.smtp.timeout", "5000");
        return sender;
    }
}
