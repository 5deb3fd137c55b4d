package freshet.database;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The product as people run it: a process of its own that is started, refused, killed and stopped. */
@Tag("process")
class StartAndStopTests {

    @TempDir
    Path folder;

    @Test
    void losesNothingWhenKilledAndStopsCleanlyWhenAsked() throws Exception {
        try (RunningProgram first = RunningProgram.freshet("--server.port=0", dataIn(folder))) {
            String address = first.awaitLine("Freshet is ready:");
            assertThat(health(address)).contains("\"UP\"");
            execute("create table kept (word text)");
            execute("insert into kept values ('acknowledged')");

            try (RunningProgram second = RunningProgram.freshet("--server.port=0", dataIn(folder))) {
                assertThat(second.awaitEnd()).isEqualTo(1);
                assertThat(second.said())
                        .singleElement()
                        .asString()
                        .startsWith("Freshet is already running on the data folder " + folder);
            }
            first.kill();
        }
        assertThat(RunningProgram.serversOf(folder)).isNotEmpty();

        try (RunningProgram again = RunningProgram.freshet("--server.port=0", dataIn(folder))) {
            again.awaitLine("Freshet is ready:");
            assertThat(again.said())
                    .first()
                    .isEqualTo("Stopping the PostgreSQL that an interrupted run left behind ...");
            assertThat(keptWord()).isEqualTo("acknowledged");

            again.stop();
            assertThat(again.said()).last().asString().startsWith("Freshet is ready:");
        }
        assertThat(RunningProgram.serversOf(folder)).isEmpty();
        assertThat(folder.resolve("cluster-18/postmaster.pid")).doesNotExist();
        assertThat(Files.readString(folder.resolve("logs/freshet.log"))).doesNotContain(" ERROR ", "PSQLException");
    }

    @Test
    void startsNoServerOfItsOwnWhenOneIsConfigured(@TempDir Path elsewhere) throws Exception {
        try (EmbeddedPostgres configured = EmbeddedPostgres.start(DataFolder.claim(elsewhere), line -> {});
                RunningProgram freshet = RunningProgram.freshet(
                        "--server.port=0",
                        dataIn(folder),
                        "--spring.datasource.url=" + configured.getJdbcUrl(),
                        "--spring.datasource.username=" + configured.getUsername(),
                        "--spring.datasource.password=" + configured.getPassword())) {
            freshet.awaitLine("Freshet is ready:");

            assertThat(freshet.said()).hasSize(1);
            assertThat(RunningProgram.serversOf(folder)).isEmpty();
            assertThat(folder.resolve("instance.lock")).doesNotExist();
            assertThat(folder.resolve("cluster-18")).doesNotExist();
            freshet.stop();
            assertThat(RunningProgram.serversOf(elsewhere)).isNotEmpty();
        }
    }

    @Test
    void saysThatAConfiguredServerDoesNotAnswer() throws Exception {
        refuses(
                "Freshet cannot reach the database that spring.datasource.url names",
                "--server.port=0",
                dataIn(folder),
                "--spring.datasource.url=jdbc:postgresql://127.0.0.1:1/freshet");
    }

    @Test
    void refusesATakenPort() throws Exception {
        try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getByName("127.0.0.1"))) {
            refuses(
                    "Freshet cannot listen on port " + taken.getLocalPort() + ": ",
                    "--server.port=" + taken.getLocalPort(),
                    dataIn(folder));
        }
    }

    @Test
    void refusesAPortThatIsNoNumber() throws Exception {
        refuses("The setting server.port is http", "--server.port=http", dataIn(folder));
    }

    @Test
    void refusesAFolderThatItCannotWriteTo() throws Exception {
        Path file = Files.createFile(folder.resolve("file"));
        refuses(
                "Freshet cannot write to its data folder " + file.resolve("data") + ": ",
                "--server.port=0",
                dataIn(file.resolve("data")));
    }

    @Test
    void refusesAFolderWhoseNameAShellWouldRead() throws Exception {
        Path named = folder.resolve("$HOME");
        refuses("PostgreSQL cannot work in the data folder " + named + " because", "--server.port=0", dataIn(named));
    }

    private static void refuses(String sentence, String... arguments) throws InterruptedException {
        try (RunningProgram refused = RunningProgram.freshet(arguments)) {
            assertThat(refused.awaitEnd()).isEqualTo(1);
            assertThat(refused.said()).singleElement().asString().startsWith(sentence);
        }
    }

    private static String dataIn(Path folder) {
        return "--freshet.data-dir=" + folder;
    }

    private static String health(String address) throws IOException, InterruptedException {
        HttpRequest request =
                HttpRequest.newBuilder(URI.create(address + "actuator/health")).build();
        return HttpClient.newHttpClient().send(request, BodyHandlers.ofString()).body();
    }

    private void execute(String sql) throws IOException, SQLException {
        try (Connection connection = connect()) {
            connection.createStatement().execute(sql);
        }
    }

    private String keptWord() throws IOException, SQLException {
        try (Connection connection = connect();
                ResultSet row = connection.createStatement().executeQuery("select word from kept")) {
            row.next();
            return row.getString(1);
        }
    }

    /** Looks the server's port up where PostgreSQL writes it down: the fourth line of its postmaster.pid. */
    private Connection connect() throws IOException, SQLException {
        String port =
                Files.readAllLines(folder.resolve("cluster-18/postmaster.pid")).get(3);
        String password = Files.readString(folder.resolve("database-password")).strip();
        return DriverManager.getConnection("jdbc:postgresql://127.0.0.1:" + port + "/postgres", "freshet", password);
    }
}
