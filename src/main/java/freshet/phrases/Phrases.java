package freshet.phrases;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.springframework.core.io.ClassPathResource;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;

/**
 * Says stored texts in the reader's language. The text as it is stored is the key: what an owner wrote or changed has no translation
 * and is said as it was written. Nothing that is sent, stored or signed comes from here.
 */
public final class Phrases {

    /** A season's turn behind the name of its work, such as 2026 or 2026/27. */
    private static final Pattern TURN = Pattern.compile("(.+)( \\d{4}\\S*)");

    private static final List<String> FILES = List.of(
            "any-kind",
            "utility-submersible",
            "sump-with-float",
            "sewage",
            "engine-trash",
            "battery-backup",
            "circulator",
            "services",
            "rules");

    /** Read once, when first asked for. */
    private static final class Read {

        static final Map<String, String> SPANISH = read("es");
    }

    /** The text in the language of this locale; as it is where there is no translation. */
    public static String said(Locale locale, String text) {
        if (!locale.getLanguage().equals("es")) {
            return text;
        }
        Map<String, String> spanish = Read.SPANISH;
        String said = spanish.get(text);
        if (said != null) {
            return said;
        }
        Matcher turn = TURN.matcher(text);
        return turn.matches() && spanish.containsKey(turn.group(1)) ? spanish.get(turn.group(1)) + turn.group(2) : text;
    }

    private Phrases() {}

    private static Map<String, String> read(String language) {
        Map<String, String> phrases = new HashMap<>();
        LoaderOptions options = new LoaderOptions();
        for (String file : FILES) {
            try (InputStream text =
                    new ClassPathResource("phrases/" + language + "/" + file + ".yaml").getInputStream()) {
                Map<?, ?> pairs = new Yaml(new SafeConstructor(options)).load(text);
                pairs.forEach((original, said) -> {
                    phrases.put(original.toString(), said.toString());
                    // a caution of several lines is shown line by line
                    Iterator<String> line = said.toString().lines().iterator();
                    original.toString().lines().forEach(each -> phrases.putIfAbsent(each, line.next()));
                });
            } catch (IOException missing) {
                throw new UncheckedIOException(missing);
            }
        }
        return Map.copyOf(phrases);
    }
}
