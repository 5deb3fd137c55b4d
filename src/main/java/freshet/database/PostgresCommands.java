package freshet.database;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** Runs PostgreSQL's programs one after the other, as an ordinary user even where Freshet itself is root. */
final class PostgresCommands {

    private final Path bin;
    private final Path said;
    private final List<String> asOrdinaryUser;

    PostgresCommands(Path home, Path dataFolder) throws IOException {
        this.bin = home.resolve("bin");
        this.said = dataFolder.resolve("postgres-command.log");
        this.asOrdinaryUser = stepDownFromRoot(said);
    }

    /** Runs a program to its end; fails when it says no or takes longer. */
    void run(int seconds, String program, String... arguments) throws IOException {
        List<String> command = new ArrayList<>(asOrdinaryUser);
        command.add(bin.resolve(program).toString());
        command.addAll(List.of(arguments));
        if (!succeeds(seconds, command, said)) {
            throw new IOException(program + " failed, see " + said);
        }
    }

    /** PostgreSQL refuses to run as root; inside a user namespace of its own it sees an ordinary user. */
    private static List<String> stepDownFromRoot(Path said) throws IOException {
        Path self = Path.of("/proc/self");
        if (!Files.exists(self) || !Integer.valueOf(0).equals(Files.getAttribute(self, "unix:uid"))) {
            return List.of();
        }
        if (canUnshare(said)) {
            return List.of("unshare", "-U");
        }
        throw new StartRefused("PostgreSQL does not run as root, and this machine does not let Freshet step down by"
                + " itself: start Freshet as an ordinary user, or set spring.datasource.url to a server of your own.");
    }

    private static boolean canUnshare(Path said) {
        try {
            return succeeds(10, List.of("unshare", "-U", "true"), said);
        } catch (IOException thereIsNoSuchProgram) {
            return false;
        }
    }

    /** What the program says goes to a file, since a server that it starts would hold a pipe open. */
    private static boolean succeeds(int seconds, List<String> command, Path said) throws IOException {
        Process process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(said.toFile())
                .start();
        try {
            boolean ended = process.waitFor(seconds, TimeUnit.SECONDS);
            return ended && process.exitValue() == 0;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted while " + command.get(0) + " ran", e);
        } finally {
            process.destroyForcibly();
        }
    }
}
