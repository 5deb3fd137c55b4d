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
 * launcher in {@code target/test-postgres-<fork>}; an empty database for each run either way.
 */
@TestConfiguration(proxyBeanMethods = false)
public class TestDatabase {

    private static final String NAME = "freshet_test";

    // all tables but the history of the migrations and the scheduler's; as replica neither foreign keys nor triggers
    // object
    private static final String AS_STARTED = """
            set session_replication_role = replica;
            do $$
            declare
              ours constant text[] := array(select tablename from pg_tables where schemaname = 'public'
                and tablename not like 'qrtz\\_%' and tablename <> 'flyway_schema_history');
              each text;
            begin
              if to_regnamespace('as_started') is null then
                create schema as_started;
                foreach each in array ours loop
                  execute format('create table as_started.%1$I as table public.%1$I', each);
                end loop;
              end if;
              foreach each in array ours loop
                execute format('delete from public.%I', each);
              end loop;
              for each in select tablename from pg_tables where schemaname = 'as_started' loop
                execute format('insert into public.%1$I overriding system value table as_started.%1$I', each);
              end loop;
            end $$;
            set session_replication_role = default;
            """;

    @Bean
    JdbcConnectionDetails testDatabase() {
        return Shared.DETAILS;
    }

    @Bean
    @Primary
    TestClock testClock() {
        return new TestClock();
    }

    /** Brings the rooms' tables back to what they held when the product had started; {@link FreshetTest} does it before each test. */
    public static void clean(DataSource dataSource) {
        try (Connection connection = dataSource.getConnection();
                Statement statement = connection.createStatement()) {
            statement.execute(AS_STARTED);
        } catch (SQLException e) {
            throw new IllegalStateException("the test database was not cleaned", e);
        }
    }

    /** An empty database of that name on the server of the tests. */
    public static JdbcConnectionDetails empty(String name) {
        JdbcConnectionDetails server = Server.STARTED;
        String url = server.getJdbcUrl();
        try (Connection connection = DriverManager.getConnection(url, server.getUsername(), server.getPassword());
                Statement statement = connection.createStatement()) {
            statement.execute("drop database if exists " + name + " with (force)");
            statement.execute("create database " + name);
        } catch (SQLException e) {
            throw new IllegalStateException("no empty test database", e);
        }
        return new Details(
                url.replaceFirst("/[^/?]*(\\?.*)?$", "/" + name), server.getUsername(), server.getPassword());
    }

    /** Started by the first that asks, then one for the whole run. */
    private static final class Server {

        static final JdbcConnectionDetails STARTED = DockerClientFactory.instance()
                        .isDockerAvailable()
                ? container()
                : TestServer.start(Path.of("target", "test-postgres-" + System.getProperty("freshet.fork", "1")));

        private static JdbcConnectionDetails container() {
            PostgreSQLContainer postgres = new PostgreSQLContainer("postgres:18-alpine")
                    .withEnv("POSTGRES_INITDB_ARGS", "--locale=C --locale-provider=builtin --builtin-locale=C.UTF-8");
            postgres.start();
            return new Details(postgres.getJdbcUrl(), postgres.getUsername(), postgres.getPassword());
        }
    }

    /** Made for the first context, then the same for all. */
    private static final class Shared {

        static final JdbcConnectionDetails DETAILS = empty(NAME);
    }

    private record Details(String getJdbcUrl, String getUsername, String getPassword)
            implements JdbcConnectionDetails {}
}
