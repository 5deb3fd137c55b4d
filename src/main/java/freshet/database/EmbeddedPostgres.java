package freshet.database;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;

/** A PostgreSQL server of our own on the data folder: durable, for this machine only, stopped when Freshet stops. */
final class EmbeddedPostgres implements JdbcConnectionDetails, AutoCloseable {

    private static final String USER = "freshet";

    private static final long ROOM_FOR_A_NEW_CLUSTER_BYTES = 300L << 20;
    private static final long ROOM_TO_WORK_BYTES = 20L << 20;
    private static final String NO_SOCKET = "-c unix_socket_directories=";
    private static final String DURABLE = "-c fsync=on -c synchronous_commit=on -c full_page_writes=on";
    // the collector keeps a week of the server's messages in the cluster's own folder and no more
    private static final String LOG = "-c logging_collector=on -c log_filename=postgres-%a.log"
            + " -c log_truncate_on_rotation=on -c log_rotation_size=0 -c log_checkpoints=off";

    private final DataFolder folder;
    private final PostgresCommands commands;
    private final Path cluster;
    private final Path passwordFile;
    private int port;

    private EmbeddedPostgres(DataFolder folder, PostgresCommands commands) {
        this.folder = folder;
        this.commands = commands;
        this.cluster = folder.path().resolve("cluster-" + PostgresBinaries.MAJOR);
        this.passwordFile = folder.path().resolve("database-password");
    }

    /** Unpacks what is missing, stops what a killed Freshet left behind, and returns once the server answers. */
    static EmbeddedPostgres start(DataFolder folder, Consumer<String> progress) {
        try {
            long room = Files.getFileStore(folder.path()).getUsableSpace();
            boolean first = !Files.exists(folder.path().resolve("cluster-" + PostgresBinaries.MAJOR));
            if (room < (first ? ROOM_FOR_A_NEW_CLUSTER_BYTES : ROOM_TO_WORK_BYTES)) {
                throw new StartRefused("The disk that holds the data folder " + folder.path() + " is full ("
                        + (room >> 20) + " MB free): make room there, or choose another folder with"
                        + " --freshet.data-dir=FOLDER.");
            }
            Path programs = PostgresBinaries.unpackInto(folder.path(), progress);
            EmbeddedPostgres server = new EmbeddedPostgres(folder, new PostgresCommands(programs, folder.path()));
            server.makeClusterOnce(progress);
            server.clearAwayFormerServer(progress);
            progress.accept("Starting PostgreSQL " + PostgresBinaries.MAJOR + " ...");
            server.startServer();
            return server;
        } catch (IOException e) {
            throw new StartRefused(
                    "Freshet cannot use its data folder " + folder.path() + " (" + e.getMessage()
                            + "): look at the disk and at who may write there.",
                    e);
        }
    }

    @Override
    public String getJdbcUrl() {
        return "jdbc:postgresql://127.0.0.1:" + port + "/postgres";
    }

    @Override
    public String getUsername() {
        return USER;
    }

    @Override
    public String getPassword() {
        try {
            return Files.readString(passwordFile).strip();
        } catch (IOException e) {
            throw new StartRefused(
                    "The file " + passwordFile + " cannot be read, and the database opens to nothing else: put it back"
                            + " from a copy of the data folder.",
                    e);
        }
    }

    /** Stops the server in order: what is committed is on the disk before this returns. */
    @Override
    public void close() {
        try {
            pgCtl(50, "stop", "-m", "fast");
        } catch (IOException e) {
            // the server is left to the next start, which finds and stops it
            System.err.println("PostgreSQL did not stop in time: the next start of Freshet puts it right.");
        } finally {
            folder.close();
        }
    }

    private void makeClusterOnce(Consumer<String> progress) throws IOException {
        if (Files.isDirectory(cluster)) {
            return;
        }
        progress.accept("Creating the database in " + folder.path() + " ...");
        writeNewPassword();
        Path part = folder.path().resolve("cluster-" + PostgresBinaries.MAJOR + ".part");
        DataFolder.remove(part);
        commands.run(
                300,
                "initdb",
                "--pgdata=" + part,
                "--username=" + USER,
                "--auth=scram-sha-256",
                "--pwfile=" + passwordFile,
                "--encoding=UTF8",
                "--locale=C",
                "--locale-provider=builtin",
                "--builtin-locale=C.UTF-8",
                "--data-checksums");
        Files.move(part, cluster, StandardCopyOption.ATOMIC_MOVE);
    }

    private void writeNewPassword() throws IOException {
        byte[] secret = new byte[24];
        new SecureRandom().nextBytes(secret);
        Files.deleteIfExists(passwordFile);
        Files.createFile(passwordFile, DataFolder.ownerOnly("rw-------"));
        Files.writeString(passwordFile, HexFormat.of().formatHex(secret) + "\n");
    }

    /**
     * A killed Freshet leaves its server running; a power cut leaves a process number that may by now be another program's, for
     * which pg_ctl would wait in vain. Holding the folder's lock, we know that no living Freshet needs either.
     */
    private void clearAwayFormerServer(Consumer<String> progress) throws IOException {
        Path pidFile = cluster.resolve("postmaster.pid");
        if (!Files.exists(pidFile)) {
            return;
        }
        String pid = Files.readString(pidFile).lines().findFirst().orElse("").strip();
        Optional<ProcessHandle> process =
                pid.matches("\\d{1,9}") ? ProcessHandle.of(Long.parseLong(pid)) : Optional.empty();
        if (process.isEmpty()) {
            return; // nobody has the number, and the server itself knows how to take over from a dead one
        }
        if (isServerOfThisFolder(process.get())) {
            progress.accept("Stopping the PostgreSQL that an interrupted run left behind ...");
            try {
                pgCtl(100, "stop", "-m", "fast");
            } catch (IOException notStopped) {
                // one that was just dying needs no stop
                if (isServerOfThisFolder(process.get())) {
                    throw notStopped;
                }
            }
        } else {
            Files.deleteIfExists(pidFile);
        }
    }

    private boolean isServerOfThisFolder(ProcessHandle process) throws IOException {
        Path data = folder.path().toRealPath();
        // the programs lie in the data folder, so the path tells our server from every other one
        return process.info()
                .command()
                .map(Path::of)
                .filter(program -> program.startsWith(data)
                        && program.getFileName().toString().startsWith("postgres"))
                .isPresent();
    }

    private void startServer() throws IOException {
        for (int attempt = 1; ; attempt++) {
            port = freePort();
            try {
                pgCtl(300, "start", "-o", options());
                return;
            } catch (IOException e) {
                // Ctrl-C in a terminal ends pg_ctl but not the server that it has just begun
                clearAwayFormerServer(line -> {});
                // between our look and the server's start another program may have taken the port
                if (attempt == 3 || isFree(port)) {
                    throw e;
                }
            }
        }
    }

    private String options() {
        return String.join(
                " ",
                DURABLE,
                LOG,
                NO_SOCKET,
                "-c listen_addresses=127.0.0.1",
                "-c port=" + port,
                "-c max_connections=60");
    }

    private void pgCtl(int seconds, String action, String... arguments) throws IOException {
        String[] whole = {action, "-D", cluster.toString(), "-w", "-t", String.valueOf(seconds)};
        commands.run(
                seconds + 20,
                "pg_ctl",
                Stream.concat(Stream.of(whole), Stream.of(arguments)).toArray(String[]::new));
    }

    private static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getByName("127.0.0.1"))) {
            return socket.getLocalPort();
        }
    }

    private static boolean isFree(int port) {
        try (ServerSocket socket = new ServerSocket(port, 1, InetAddress.getByName("127.0.0.1"))) {
            return true;
        } catch (IOException e) {
            return false;
        }
    }
}
