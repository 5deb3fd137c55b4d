package freshet;

import freshet.database.StartRefused;
import freshet.database.StartUpChecks;
import java.time.Clock;
import org.slf4j.LoggerFactory;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.SpringApplication.AbandonedRunException;
import org.springframework.boot.autoconfigure.SpringBootApplication;
import org.springframework.boot.web.server.PortInUseException;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.context.annotation.Bean;
import org.springframework.core.NestedExceptionUtils;

/** Starts Freshet, says in plain lines how that went, and holds the one clock that every room reads. */
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
        } catch (RuntimeException failure) {
            System.err.println(whyNot(failure));
            System.exit(1);
        }
    }

    private static String whyNot(Throwable failure) {
        for (Throwable each = failure; each != null; each = each.getCause()) {
            if (each instanceof StartRefused) {
                return each.getMessage();
            }
            if (each instanceof PortInUseException taken) {
                return "Freshet cannot listen on port " + taken.getPort()
                        + ": stop the program that uses it, or choose another port with --server.port=PORT.";
            }
        }
        LoggerFactory.getLogger(Freshet.class).debug("Freshet did not start", failure);
        Throwable root = NestedExceptionUtils.getMostSpecificCause(failure);
        return "Freshet did not start: " + root.getMessage().lines().findFirst().orElse(root.toString());
    }

    @Bean
    Clock clock() {
        return Clock.systemUTC();
    }
}
