package freshet.database;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Locale;
import java.util.function.Consumer;
import org.apache.commons.compress.archivers.tar.TarArchiveEntry;
import org.apache.commons.compress.archivers.tar.TarArchiveInputStream;
import org.tukaani.xz.XZInputStream;

/** The PostgreSQL programs that the jar carries, unpacked once per version into the data folder. */
final class PostgresBinaries {

    /** Version of the archive that the pom names; a test holds it against what the server says of itself. */
    static final String VERSION = "18.3.0";

    static final String MAJOR = VERSION.substring(0, VERSION.indexOf('.'));

    private PostgresBinaries() {}

    /** Returns the folder with `bin` in it; half-unpacked files of an interrupted start are thrown away. */
    static Path unpackInto(Path dataFolder, Consumer<String> progress) throws IOException {
        Path home = dataFolder.resolve("postgres-" + VERSION);
        if (Files.isDirectory(home)) {
            return home;
        }
        progress.accept("Unpacking PostgreSQL " + MAJOR + " ...");
        Path part = dataFolder.resolve("postgres-" + VERSION + ".part");
        DataFolder.remove(part);
        try (InputStream archive = PostgresBinaries.class.getResourceAsStream(archiveName())) {
            if (archive == null) {
                throw new StartRefused(
                        "This build of Freshet carries no PostgreSQL for " + System.getProperty("os.name")
                                + " on " + System.getProperty("os.arch")
                                + ": build it on this kind of machine, or set spring.datasource.url to a server of your own.");
            }
            unpack(new TarArchiveInputStream(new XZInputStream(new BufferedInputStream(archive))), part);
        }
        return Files.move(part, home, StandardCopyOption.ATOMIC_MOVE);
    }

    private static void unpack(TarArchiveInputStream tar, Path into) throws IOException {
        for (TarArchiveEntry entry = tar.getNextEntry(); entry != null; entry = tar.getNextEntry()) {
            Path target = into.resolve(entry.getName()).normalize();
            if (!target.startsWith(into)) {
                throw new IOException("entry outside of the archive: " + entry.getName());
            }
            if (entry.isDirectory()) {
                Files.createDirectories(target);
                continue;
            }
            Files.createDirectories(target.getParent());
            if (entry.isSymbolicLink()) {
                Files.createSymbolicLink(target, Path.of(entry.getLinkName()));
            } else if (entry.isLink()) {
                Files.copy(into.resolve(entry.getLinkName()), target);
            } else {
                Files.copy(tar, target);
                boolean runs = (entry.getMode() & 0100) != 0;
                if (runs && Files.getFileStore(target).supportsFileAttributeView("posix")) {
                    Files.setPosixFilePermissions(target, PosixFilePermissions.fromString("rwxr-xr-x"));
                }
            }
        }
    }

    private static String archiveName() {
        String os = System.getProperty("os.name").toLowerCase(Locale.ROOT);
        String name = os.contains("win") ? "windows" : os.contains("mac") ? "darwin" : "linux";
        String arch = System.getProperty("os.arch").matches("aarch64|arm64") ? "arm_64" : "x86_64";
        return "/postgres-" + name + "-" + arch + ".txz";
    }
}
