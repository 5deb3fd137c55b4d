package freshet.database;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the launcher does about the remains of kills and power cuts, one folder for all. */
@Tag("process")
class InterruptedStartTests {

    @TempDir
    static Path folder;

    final List<String> said = new ArrayList<>();

    @BeforeAll
    static void keepATable() throws SQLException {
        try (EmbeddedPostgres server = start(new ArrayList<>())) {
            execute(server.getJdbcUrl(), "create table kept (word text)");
        }
    }

    @AfterEach
    void leavesNoServer() throws IOException {
        List<ProcessHandle> left = RunningProgram.serversOf(folder);
        left.forEach(ProcessHandle::destroyForcibly);
        assertThat(left).isEmpty();
    }

    @Test
    void stopsTheServerOfAKilledProgramAndKeepsItsLastCommit() throws Exception {
        try (RunningProgram killed = RunningProgram.launcher(folder)) {
            execute(killed.awaitLine("url"), "insert into kept values ('orphan')");
            killed.kill();
        }
        assertThat(RunningProgram.serversOf(folder)).isNotEmpty();

        try (EmbeddedPostgres server = start(said)) {
            assertThat(kept(server)).contains("orphan");
        }
        assertThat(said).contains("Stopping the PostgreSQL that an interrupted run left behind ...");
    }

    @Test
    void keepsTheLastCommitWhenTheServerIsKilledToo() throws Exception {
        try (RunningProgram killed = RunningProgram.launcher(folder)) {
            execute(killed.awaitLine("url"), "insert into kept values ('power cut')");
            killed.kill();
        }
        RunningProgram.serversOf(folder).forEach(ProcessHandle::destroyForcibly);

        try (EmbeddedPostgres server = start(said)) {
            assertThat(kept(server)).contains("power cut");
        }
    }

    @Test
    void leavesAnotherProgramAloneThatNowBearsTheOldServersNumber() throws Exception {
        Path cluster = folder.resolve("cluster-18");
        Files.writeString(
                cluster.resolve("postmaster.pid"),
                String.join(
                                "\n",
                                ProcessHandle.current().pid() + "",
                                cluster + "",
                                "1700000000",
                                "5433",
                                "",
                                "127.0.0.1",
                                "")
                        + "\n");

        try (EmbeddedPostgres server = start(said)) {
            assertThat(kept(server)).isNotNull();
        }
        assertThat(said).containsExactly("Starting PostgreSQL 18 ...");
    }

    @Test
    void beginsAgainWhereUnpackingOrCreatingWasCutShort(@TempDir Path other) throws Exception {
        Files.createDirectories(other.resolve("postgres-18.3.0.part/bin"));
        Files.writeString(other.resolve("postgres-18.3.0.part/bin/postgres"), "half");
        Files.createDirectories(other.resolve("cluster-18.part"));
        Files.writeString(other.resolve("cluster-18.part/postgresql.conf"), "");
        Files.writeString(other.resolve("database-password"), "");

        try (EmbeddedPostgres server = EmbeddedPostgres.start(DataFolder.claim(other), said::add)) {
            execute(server.getJdbcUrl(), server.getPassword(), "create table fresh (word text)");
        }
        assertThat(other.resolve("postgres-18.3.0.part")).doesNotExist();
        assertThat(other.resolve("cluster-18.part")).doesNotExist();
    }

    @Test
    void saysThatThePasswordFileIsGone() throws Exception {
        Path password = folder.resolve("database-password");
        Path aside = folder.resolve("aside");
        Files.move(password, aside);
        try (EmbeddedPostgres server = start(said)) {
            assertThatThrownBy(server::getPassword)
                    .isInstanceOf(StartRefused.class)
                    .hasMessageContaining("The file " + password + " cannot be read");
        } finally {
            Files.move(aside, password);
        }
    }

    private static EmbeddedPostgres start(List<String> said) {
        return EmbeddedPostgres.start(DataFolder.claim(folder), said::add);
    }

    private static void execute(String url, String sql) throws SQLException {
        execute(url, password(), sql);
    }

    private static void execute(String url, String password, String sql) throws SQLException {
        try (Connection connection = DriverManager.getConnection(url, "freshet", password)) {
            connection.createStatement().execute(sql);
        }
    }

    private static List<String> kept(EmbeddedPostgres server) throws SQLException {
        List<String> words = new ArrayList<>();
        try (Connection connection = DriverManager.getConnection(server.getJdbcUrl(), "freshet", server.getPassword());
                ResultSet rows = connection.createStatement().executeQuery("select word from kept")) {
            while (rows.next()) {
                words.add(rows.getString(1));
            }
        }
        return words;
    }

    private static String password() {
        try {
            return Files.readString(folder.resolve("database-password")).strip();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
