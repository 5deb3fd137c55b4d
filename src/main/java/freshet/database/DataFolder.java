package freshet.database;

import java.io.File;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import org.jspecify.annotations.Nullable;

/** The folder that holds everything Freshet keeps, locked for as long as one running Freshet uses it. */
final class DataFolder implements AutoCloseable {

    private final Path path;
    private final FileChannel lock;

    private DataFolder(Path path, FileChannel lock) {
        this.path = path;
        this.lock = lock;
    }

    /** Makes the folder if it is new and locks it, or refuses: it cannot be written to, or another Freshet has it. */
    static DataFolder claim(Path folder) {
        Path path = folder.toAbsolutePath().normalize();
        refuseNamesThatAShellReads(path);
        FileChannel channel = null;
        try {
            Files.createDirectories(path, ownerOnly("rwx------"));
            channel = FileChannel.open(
                    path.resolve("instance.lock"), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
            if (channel.tryLock() != null) {
                return new DataFolder(path, channel);
            }
        } catch (OverlappingFileLockException heldByThisProgram) {
            // the same answer as for a lock held by another program
        } catch (IOException e) {
            throw new StartRefused(
                    "Freshet cannot write to its data folder " + path
                            + ": let this account write there, or choose another folder with --freshet.data-dir=FOLDER.",
                    e);
        }
        closeQuietly(channel);
        throw new StartRefused(
                "Freshet is already running on the data folder " + path
                        + ": use the one that runs, or stop it first, or choose another folder with --freshet.data-dir=FOLDER.");
    }

    /** PostgreSQL's own programs call each other through a shell, with the path between double quotes. */
    private static void refuseNamesThatAShellReads(Path path) {
        String special = File.separatorChar == '\\' ? "\"%\n" : "\"$`\\\n";
        if (path.toString().chars().anyMatch(c -> special.indexOf(c) >= 0)) {
            throw new StartRefused("PostgreSQL cannot work in the data folder " + path
                    + " because of a sign in its name (a double quote, dollar, percent, backtick or backslash): choose"
                    + " another with --freshet.data-dir=FOLDER.");
        }
    }

    Path path() {
        return path;
    }

    /** Attributes for a new file or folder that only this account may open; none where the file system has no such thing. */
    static FileAttribute<?>[] ownerOnly(String permissions) {
        return FileSystems.getDefault().supportedFileAttributeViews().contains("posix")
                ? new FileAttribute<?>[] {
                    PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(permissions))
                }
                : new FileAttribute<?>[0];
    }

    /** Removes a file or a whole folder; nothing happens when there is none. */
    static void remove(Path fileOrFolder) throws IOException {
        if (Files.isDirectory(fileOrFolder, LinkOption.NOFOLLOW_LINKS)) {
            try (var inside = Files.list(fileOrFolder)) {
                for (Path each : inside.toList()) {
                    remove(each);
                }
            }
        }
        Files.deleteIfExists(fileOrFolder);
    }

    /** Gives the folder free for the next start. */
    @Override
    public void close() {
        closeQuietly(lock);
    }

    private static void closeQuietly(@Nullable FileChannel channel) {
        try {
            if (channel != null) {
                channel.close();
            }
        } catch (IOException e) {
            // the lock ends with the program at the latest
        }
    }
}
