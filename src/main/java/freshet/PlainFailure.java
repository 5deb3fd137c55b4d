package freshet;

import freshet.database.StartRefused;
import java.sql.SQLException;
import org.jspecify.annotations.Nullable;
import org.slf4j.LoggerFactory;
import org.springframework.boot.SpringBootExceptionReporter;
import org.springframework.boot.logging.LoggingSystemProperty;
import org.springframework.boot.web.server.PortInUseException;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.core.NestedExceptionUtils;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;

/** Says in one sentence why Freshet did not start; what a developer would want to know goes to the log. */
@Order(Ordered.HIGHEST_PRECEDENCE)
class PlainFailure implements SpringBootExceptionReporter {

    // Spring Boot looks for this constructor
    PlainFailure(@Nullable ConfigurableApplicationContext context) {}

    @Override
    public boolean reportException(Throwable failure) {
        System.err.println(sentence(failure));
        return true;
    }

    private static @Nullable String sentence(Throwable failure) {
        for (Throwable each = failure; each != null; each = each.getCause()) {
            if (each instanceof StartRefused) {
                return each.getMessage();
            }
            if (each instanceof PortInUseException taken) {
                return StartRefused.portTaken(taken.getPort());
            }
            // class 08 of the SQL standard's states: no connection
            if (each instanceof SQLException answer
                    && answer.getSQLState() != null
                    && answer.getSQLState().startsWith("08")) {
                return "Freshet cannot reach the database that spring.datasource.url names: start that server, or mend the"
                        + " setting.";
            }
        }
        LoggerFactory.getLogger(PlainFailure.class).info("Freshet did not start", failure);
        Throwable root = NestedExceptionUtils.getMostSpecificCause(failure);
        String message = root.getMessage() == null ? root.toString() : root.getMessage();
        String log = System.getProperty(LoggingSystemProperty.LOG_FILE.getEnvironmentVariableName(), "");
        return "Freshet did not start: " + message.lines().findFirst().orElse("")
                + (log.isEmpty() ? "" : " (the whole story is in " + log + ")");
    }
}
