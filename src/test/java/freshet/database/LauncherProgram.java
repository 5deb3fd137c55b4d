package freshet.database;

import java.nio.file.Path;

/** The launcher alone as a program of its own: starts a server on the folder that it is given and holds it until it is killed. */
final class LauncherProgram {

    private LauncherProgram() {}

    public static void main(String[] arguments) throws InterruptedException {
        EmbeddedPostgres server = EmbeddedPostgres.start(
                DataFolder.claim(Path.of(arguments[0])), line -> System.out.println("| " + line));
        System.out.println("url " + server.getJdbcUrl());
        Thread.sleep(Long.MAX_VALUE);
    }
}
