package freshet;

import freshet.database.TestServer;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import javax.sql.DataSource;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Primary;
import org.testcontainers.DockerClientFactory;
import org.testcontainers.postgresql.PostgreSQLContainer;

/**
 * The one place that decides on which PostgreSQL the tests run: a container where a Docker engine answers, else the product's own
 * launcher in {@code target/test-postgres}; an empty database for each run either way.
 */
@TestConfiguration(proxyBeanMethods = false)
public class TestDatabase {

    private static final String NAME = "freshet_test";

    // everything but the history of the migrations and the scheduler's tables; as replica neither foreign keys nor
    // triggers object
    private static final String DELETE_ALL_ROWS = """
            set session_replication_role = replica;
            do $$
            declare each record;
            begin
              for each in select schemaname, tablename from pg_tables
                          where schemaname = 'public' and tablename not like 'qrtz\\_%'
                            and tablename <> 'flyway_schema_history' loop
                execute format('delete from %I.%I', each.schemaname, each.tablename);
              end loop;
            end $$;
            set session_replication_role = default;
            """;

    @Bean
    JdbcConnectionDetails testDatabase() {
        return Server.DETAILS;
    }

    @Bean
    @Primary
    TestClock testClock() {
        return new TestClock();
    }

    /** Empties every table of the rooms; {@link FreshetTest} does it before each test. */
    public static void clean(DataSource dataSource) {
        try (Connection connection = dataSource.getConnection();
                Statement statement = connection.createStatement()) {
            statement.execute(DELETE_ALL_ROWS);
        } catch (SQLException e) {
            throw new IllegalStateException("the test database was not emptied", e);
        }
    }

    /** Started by the first context that asks, then one for the whole run. */
    private static final class Server {

        static final JdbcConnectionDetails DETAILS =
                DockerClientFactory.instance().isDockerAvailable() ? container() : ownLauncher();

        private static JdbcConnectionDetails container() {
            PostgreSQLContainer postgres = new PostgreSQLContainer("postgres:18-alpine")
                    .withDatabaseName(NAME)
                    .withEnv("POSTGRES_INITDB_ARGS", "--locale=C --locale-provider=builtin --builtin-locale=C.UTF-8");
            postgres.start();
            return new Details(postgres.getJdbcUrl(), postgres.getUsername(), postgres.getPassword());
        }

        private static JdbcConnectionDetails ownLauncher() {
            JdbcConnectionDetails server = TestServer.start(Path.of("target", "test-postgres"));
            String url = server.getJdbcUrl();
            try (Connection connection = DriverManager.getConnection(url, server.getUsername(), server.getPassword());
                    Statement statement = connection.createStatement()) {
                statement.execute("drop database if exists " + NAME + " with (force)");
                statement.execute("create database " + NAME);
            } catch (SQLException e) {
                throw new IllegalStateException("no empty test database", e);
            }
            return new Details(
                    url.substring(0, url.lastIndexOf('/') + 1) + NAME, server.getUsername(), server.getPassword());
        }
    }

    private record Details(String getJdbcUrl, String getUsername, String getPassword)
            implements JdbcConnectionDetails {}
}
