package freshet.database;

import java.nio.file.Path;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;

/** Lends the product's own PostgreSQL launcher to the tests of the other rooms. */
public final class TestServer {

    private TestServer() {}

    /** Starts a server that keeps its files in the folder and stops when the tests end, after their contexts are closed. */
    public static JdbcConnectionDetails start(Path folder) {
        EmbeddedPostgres server = EmbeddedPostgres.start(DataFolder.claim(folder), line -> {});
        SpringApplication.getShutdownHandlers().add(server::close);
        return server;
    }
}
