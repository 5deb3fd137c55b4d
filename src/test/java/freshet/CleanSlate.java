package freshet;

import javax.sql.DataSource;
import org.springframework.context.ApplicationContext;
import org.springframework.core.Ordered;
import org.springframework.mail.javamail.JavaMailSenderImpl;
import org.springframework.test.context.TestContext;
import org.springframework.test.context.TestExecutionListener;

/** Cleans the tables, lets the clock run and takes the mail server away before each test of a {@link FreshetTest}. */
class CleanSlate implements TestExecutionListener, Ordered {

    @Override
    public int getOrder() {
        return 3_900; // before Spring's transactions (4000) and its @Sql scripts (5000)
    }

    @Override
    public void beforeTestMethod(TestContext test) {
        ApplicationContext freshet = test.getApplicationContext();
        TestDatabase.clean(freshet.getBean(DataSource.class));
        freshet.getBean(TestClock.class).reset();
        freshet.getBean(JavaMailSenderImpl.class).setHost(null);
    }
}
