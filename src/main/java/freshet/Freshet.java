package freshet;

import freshet.database.StartUpChecks;
import java.time.Clock;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.SpringApplication.AbandonedRunException;
import org.springframework.boot.autoconfigure.SpringBootApplication;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.context.annotation.Bean;

/** Starts Freshet and holds the one clock that every room reads. */
@SpringBootApplication
public class Freshet {

    public static void main(String[] arguments) {
        SpringApplication freshet = new SpringApplication(Freshet.class);
        freshet.addListeners(new StartUpChecks());
        try {
            ConfigurableApplicationContext running = freshet.run(arguments);
            System.out.println("Freshet is ready: http://localhost:"
                    + running.getEnvironment().getProperty("local.server.port") + "/");
        } catch (AbandonedRunException trainingRun) {
            throw trainingRun;
        } catch (RuntimeException reported) {
            // PlainFailure has said why
            System.exit(1);
        }
    }

    @Bean
    Clock clock() {
        return Clock.systemUTC();
    }
}
