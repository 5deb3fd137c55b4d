package freshet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.MessageFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Everything that people read is there in both languages, and nothing that they read stands in a page itself. */
class LanguageTests {

    private static final Path RESOURCES = Path.of("src/main/resources");
    private static final Locale SPANISH = Locale.forLanguageTag("es-US");

    // text between tags with a letter in it
    private static final Pattern TEXT = Pattern.compile("<([a-z][\\w:-]*)([^<>]*)>([^<>]*\\p{L}[^<>]*)<");
    private static final Pattern ATTRIBUTE =
            Pattern.compile("\\s(title|placeholder|aria-label|alt|aria-description)=\"([^\"]*\\p{L}[^\"]*)\"");

    private static final Set<String> ENGLISH_ROOMS = Set.of("api", "hydraulics", "reliability", "database", "example");
    private static final Pattern COMMENT = Pattern.compile("(?s)/\\*.*?\\*/|\"\"\".*?\"\"\"|(?m)//.*$");
    private static final Pattern NOT_READ =
            Pattern.compile("(?:new \\w*(?:Exception|Error|Stale|NotFound|NotAllowed)|super|note|log\\.\\w+"
                    + "|@\\w+|Pattern\\s*\\.compile|sql|query|update)"
                    + "\\((?:[^();]++|\\((?:[^();]++|\\([^();]*+\\))*+\\))*+\\)");
    private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\\\n]|\\\\.)*+)\"");
    private static final Pattern WORDS =
            Pattern.compile("^\\W*[A-Za-z]{2,} $|^ [A-Za-z]{2,}|[a-z]{2,} [a-z]{2,} [a-z]{2,}");
    private static final Pattern SQL =
            Pattern.compile(":\\w|\\?\\)|\\b(select|insert|where|order by|nulls|limit) |\\b[hr]\\.|-src |-action ");
    /** Classes of styles, headers, and what only the log, the trail or a script reads. */
    private static final Set<String> NO_TEXT = Set.of(
            "pick down answer",
            "pick three answer",
            "pick four answer",
            "halo strong end",
            "Bearer ",
            "mail {} about {} did not go out: {}",
            "the beginning of {} was not written down",
            "the end of {} was not written down",
            "delivery set aside",
            ", conflict ",
            "rule put to rest",
            "name ",
            "from ",
            " to ",
            " by ",
            " template",
            " mm",
            " at start",
            "\\\"detail\\\":\\\"Send a live token as Authorization: Bearer <token>.\\\"}");

    private final List<String> wrong = new ArrayList<>();

    @Test
    void saysEverythingInSpanish() {
        for (Path english : bundles()) {
            Properties here = load(english);
            Properties there = load(spanish(english));
            TreeSet<String> missing = new TreeSet<>(here.stringPropertyNames());
            missing.removeAll(there.stringPropertyNames());
            missing.forEach(key -> wrong.add(key + " is not there in Spanish"));
            TreeSet<String> left = new TreeSet<>(there.stringPropertyNames());
            left.removeAll(here.stringPropertyNames());
            left.forEach(key -> wrong.add(key + " is there in Spanish only"));
        }
        assertThat(wrong).isEmpty();
    }

    @Test
    void fillsTheSamePlacesInBothLanguages() {
        for (Path english : bundles()) {
            Properties here = load(english);
            Properties there = load(spanish(english));
            for (String key : here.stringPropertyNames()) {
                String text = there.getProperty(key);
                if (text == null) {
                    continue;
                }
                if (places(here.getProperty(key), Locale.ENGLISH) != places(text, SPANISH)) {
                    wrong.add(key + " has other places: " + text);
                }
                if (here.getProperty(key).isBlank() != text.isBlank()) {
                    wrong.add(key + " says nothing in one language");
                }
            }
        }
        assertThat(wrong).isEmpty();
    }

    /** As a set of bits: which arguments the text shows, at any depth of its choices. */
    private int places(String text, Locale locale) {
        int places = 0;
        for (MatchResult place : Pattern.compile("\\{(\\d)[},]")
                .matcher(new MessageFormat(text, locale).toPattern())
                .results()
                .toList()) {
            places |= 1 << Integer.parseInt(place.group(1));
        }
        return places;
    }

    @Test
    void holdsNoTextInAPage() {
        for (Path template : files("templates", ".html")) {
            String page = read(template).replaceAll("(?s)<!--.*?-->", "");
            for (MatchResult text : TEXT.matcher(page).results().toList()) {
                String attributes = text.group(2);
                boolean replaced = attributes.contains("th:text")
                        || attributes.contains("th:utext")
                        || attributes.contains("th:replace")
                        || attributes.contains("th:insert")
                        || attributes.contains("th:remove");
                boolean ours = text.group(3).strip().equals("Freshet");
                if (!replaced
                        && !ours
                        && !text.group(1).equals("style")
                        && !text.group(1).equals("script")) {
                    wrong.add(template.getFileName() + ": " + text.group(3).strip());
                }
            }
            for (MatchResult attribute : ATTRIBUTE.matcher(page).results().toList()) {
                wrong.add(template.getFileName() + ": " + attribute.group(0).strip());
            }
        }
        assertThat(wrong).isEmpty();
    }

    /**
     * As far as a cheap look can tell: three words in small letters, or a word with a blank at its end to be joined to others, outside of
     * exceptions, the trail, logs and SQL. The JSON API answers in English by its contract, the stones and the start speak to no reader,
     * and the columns of files are translated by {@code FileWords}.
     */
    @Test
    void holdsNoTextInJava() {
        for (Path source : files(Path.of("src/main/java/freshet"), ".java")) {
            String room = source.getParent().getFileName().toString();
            if (ENGLISH_ROOMS.contains(room)
                    || source.toString().matches(".*exchange/\\w+Rows\\.java|.*freshet/\\w+\\.java")) {
                continue;
            }
            String java = NOT_READ.matcher(COMMENT.matcher(read(source)).replaceAll(""))
                    .replaceAll("");
            for (MatchResult literal : LITERAL.matcher(java).results().toList()) {
                String text = literal.group(1);
                if (WORDS.matcher(text).find() && !SQL.matcher(text).find() && !NO_TEXT.contains(text)) {
                    wrong.add(source.getFileName() + ": " + text);
                }
            }
        }
        assertThat(wrong).isEmpty();
    }

    private static List<Path> bundles() {
        return files("messages", ".properties").stream()
                .filter(bundle -> !bundle.getFileName().toString().contains("_"))
                .toList();
    }

    private static Path spanish(Path english) {
        return english.resolveSibling(english.getFileName().toString().replace(".properties", "_es.properties"));
    }

    private static List<Path> files(String folder, String ending) {
        return files(RESOURCES.resolve(folder), ending);
    }

    private static List<Path> files(Path folder, String ending) {
        try (Stream<Path> tree = Files.walk(folder)) {
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
        if (!Files.exists(bundle)) {
            return properties;
        }
        try (var reader = Files.newBufferedReader(bundle, StandardCharsets.UTF_8)) {
            properties.load(reader);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
        return properties;
    }
}
