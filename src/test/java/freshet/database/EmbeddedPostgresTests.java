package freshet.database;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class EmbeddedPostgresTests {

    @TempDir
    static Path folder;

    static final List<String> said = new ArrayList<>();
    static EmbeddedPostgres server;

    @BeforeAll
    static void start() {
        server = EmbeddedPostgres.start(DataFolder.claim(folder), said::add);
    }

    @AfterAll
    static void stop() {
        server.close();
    }

    @Test
    void saysWhatTheFirstStartWaitsFor() {
        assertThat(said)
                .containsExactly(
                        "Unpacking PostgreSQL 18 ...",
                        "Creating the database in " + folder + " ...",
                        "Starting PostgreSQL 18 ...");
    }

    @Test
    void writesToTheDiskBeforeItAnswers() throws SQLException {
        assertThat(show("fsync")).isEqualTo("on");
        assertThat(show("synchronous_commit")).isEqualTo("on");
        assertThat(show("full_page_writes")).isEqualTo("on");
        assertThat(show("data_checksums")).isEqualTo("on");
    }

    @Test
    void listensToThisMachineOnly() throws SQLException {
        assertThat(show("listen_addresses")).isEqualTo("127.0.0.1");
        assertThat(show("unix_socket_directories")).isEmpty();
    }

    @Test
    void isTheVersionThatTheFolderIsNamedAfter() throws SQLException {
        assertThat(PostgresBinaries.VERSION).startsWith(show("server_version") + ".");
        assertThat(show("server_encoding")).isEqualTo("UTF8");
    }

    @Test
    void opensToNobodyWithoutThePassword() {
        assertThatThrownBy(() -> DriverManager.getConnection(server.getJdbcUrl(), server.getUsername(), "guess"))
                .isInstanceOf(SQLException.class)
                .hasMessageContaining("password authentication failed");
    }

    @Test
    void keepsThePasswordFromOtherAccounts() throws Exception {
        Path password = folder.resolve("database-password");
        assertThat(server.getPassword()).hasSize(48);
        if (Files.getFileStore(password).supportsFileAttributeView("posix")) {
            assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(password)))
                    .isEqualTo("rw-------");
        }
    }

    @Test
    void refusesASecondUseOfItsFolder() {
        assertThatThrownBy(() -> DataFolder.claim(folder))
                .isInstanceOf(StartRefused.class)
                .hasMessageStartingWith("Freshet is already running on the data folder " + folder);
    }

    private static String show(String setting) throws SQLException {
        try (Connection connection =
                        DriverManager.getConnection(server.getJdbcUrl(), server.getUsername(), server.getPassword());
                ResultSet row = connection.createStatement().executeQuery("show " + setting)) {
            row.next();
            return row.getString(1);
        }
    }
}
