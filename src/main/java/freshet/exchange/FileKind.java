package freshet.exchange;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** What the rows of a file are about, in the order in which files are taken in. */
public enum FileKind {
    CUSTOMERS,
    SITES,
    POSITIONS,
    MODELS,
    UNITS,
    KIT,
    READINGS;

    /** The word for it in addresses and names of files. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    static Optional<FileKind> of(String word) {
        return Stream.of(values()).filter(kind -> kind.word().equals(word)).findFirst();
    }
}
