package freshet.database;

import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** A Java program in a process of its own, with what it has said so far; killed at the end of the test if it still runs. */
public final class RunningProgram implements AutoCloseable {

    private final Process process;
    private final Thread listener;
    private final List<String> said = new CopyOnWriteArrayList<>();

    private RunningProgram(Process process) {
        this.process = process;
        this.listener = new Thread(this::listen);
        listener.start();
    }

    /** Starts the product as its jar would: without the tests' classes and settings. */
    public static RunningProgram freshet(String... arguments) {
        String classPath = Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
                .filter(entry -> !entry.endsWith("test-classes"))
                .collect(Collectors.joining(File.pathSeparator));
        return start(classPath, "freshet.Freshet", arguments);
    }

    /** Starts only the launcher, see {@link LauncherProgram}. */
    static RunningProgram launcher(Path folder) {
        return start(System.getProperty("java.class.path"), LauncherProgram.class.getName(), folder.toString());
    }

    private static RunningProgram start(String classPath, String main, String... arguments) {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-cp",
                classPath,
                main));
        command.addAll(List.of(arguments));
        try {
            return new RunningProgram(
                    new ProcessBuilder(command).redirectErrorStream(true).start());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void listen() {
        try (BufferedReader lines = process.inputReader()) {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                said.add(line);
            }
        } catch (IOException e) {
            // the program was killed in the middle of a line
        }
    }

    /** Waits for a line that begins so, and returns the rest of it. */
    public String awaitLine(String beginning) throws InterruptedException {
        for (long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(60); System.nanoTime() < end; Thread.sleep(20)) {
            for (String line : said) {
                if (line.startsWith(beginning)) {
                    return line.substring(beginning.length()).strip();
                }
            }
            if (!process.isAlive() && !listener.isAlive()) {
                break;
            }
        }
        throw new AssertionError("no line \"" + beginning + "...\", but: " + said);
    }

    /** Waits for the program's own end and returns its exit code. */
    int awaitEnd() throws InterruptedException {
        if (!process.waitFor(60, TimeUnit.SECONDS)) {
            throw new AssertionError("still running, having said: " + said);
        }
        listener.join(TimeUnit.SECONDS.toMillis(10));
        return process.exitValue();
    }

    List<String> said() {
        return said;
    }

    /** Ends the program as a power cut would: nothing is told to it. */
    public void kill() throws InterruptedException {
        process.destroyForcibly();
        awaitEnd();
    }

    /** Asks the program to stop (SIGTERM) and waits for it. */
    public int stop() throws InterruptedException {
        process.destroy();
        return awaitEnd();
    }

    /** The PostgreSQL processes that run from the folder. */
    static List<ProcessHandle> serversOf(Path folder) throws IOException {
        Path real = folder.toRealPath();
        return ProcessHandle.allProcesses()
                .filter(each -> each.info().command().map(Path::of).stream().anyMatch(path -> path.startsWith(real)))
                .toList();
    }

    @Override
    public void close() {
        Stream.concat(Stream.of(process.toHandle()), process.descendants()).forEach(ProcessHandle::destroyForcibly);
    }
}
