package freshet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Every message that a page asks for exists, and stands in the bundle of its room. */
class MessageKeyTests {

    private static final Path RESOURCES = Path.of("src/main/resources");
    private static final Pattern ASKED =
            Pattern.compile("#\\{([a-z][\\w.]*)[}(]|#messages\\.msg\\('([a-z][\\w.]*)'[,)]");

    private final List<String> wrong = new ArrayList<>();

    @Test
    void findsEveryKeyThatAPageAsksFor() {
        Set<String> known = new TreeSet<>();
        for (Path bundle : files("messages", ".properties")) {
            known.addAll(load(bundle).stringPropertyNames());
        }
        for (Path template : files("templates", ".html")) {
            for (MatchResult asked : ASKED.matcher(read(template)).results().toList()) {
                String key = asked.group(1) == null ? asked.group(2) : asked.group(1);
                if (!known.contains(key)) {
                    wrong.add(template + " asks for " + key);
                }
            }
        }
        assertThat(known).isNotEmpty();
        assertThat(wrong).isEmpty();
    }

    @Test
    void keepsEachKeyInTheBundleOfItsRoom() {
        for (Path bundle : files("messages", ".properties")) {
            String room = bundle.getFileName().toString().replaceAll("[_.].*", "");
            for (String key : load(bundle).stringPropertyNames()) {
                boolean shared =
                        room.equals("layout") && (key.startsWith("measures.") || key.startsWith("typeMismatch"));
                if (!key.startsWith(room + ".") && !shared) {
                    wrong.add(bundle + " holds " + key);
                }
            }
        }
        assertThat(wrong).isEmpty();
    }

    private static List<Path> files(String folder, String ending) {
        try (Stream<Path> tree = Files.walk(RESOURCES.resolve(folder))) {
            return tree.filter(file -> file.toString().endsWith(ending))
                    .sorted()
                    .toList();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    private static Properties load(Path bundle) {
        Properties properties = new Properties();
        try (var reader = Files.newBufferedReader(bundle, StandardCharsets.UTF_8)) {
            properties.load(reader);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
        return properties;
    }
}
