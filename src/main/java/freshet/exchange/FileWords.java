package freshet.exchange;

import freshet.people.Person;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.springframework.context.MessageSource;

/**
 * The words of files as one reader writes them: headings, and the words for kinds. English is always understood; a name or note is
 * never translated. Keys of messages are the English words with a line for each blank.
 */
public final class FileWords {

    private static final String HEADING = "exchange.name.";
    private static final String WORD = "exchange.word.";
    private static final String NAME = "name";
    private static final Pattern BLANKS = Pattern.compile("[\\s_\\u00a0-]+");
    private static final Pattern PARTS = Pattern.compile("(.+?)( \\d+)?( \\p{L}+)?");

    private final MessageSource messages;
    private final Locale locale;
    private final Map<String, String> said = new HashMap<>();

    FileWords(MessageSource messages, Person reader) {
        this.messages = messages;
        this.locale = reader.locale();
    }

    /** A heading without its unit, as this reader writes it: "opening 2 name" is "apertura 2 nombre". */
    public String heading(String column) {
        String own = said(HEADING, column);
        Matcher parts = PARTS.matcher(column);
        if (!own.equals(column) || !parts.matches() || parts.group(2) == null && parts.group(3) == null) {
            return own;
        }
        boolean named = (" " + NAME).equals(parts.group(3));
        if (parts.group(3) != null && !named) {
            return column;
        }
        return said(HEADING, parts.group(1))
                + (parts.group(2) == null ? "" : parts.group(2))
                + (named ? " " + said(HEADING, NAME) : "");
    }

    /** A word for a kind, as this reader writes it; any other text as it is. */
    public String word(String english) {
        return said(WORD, english);
    }

    /** Looked up once a file: most words have no message, and to learn that takes a look into every bundle. */
    private String said(String keys, String word) {
        return said.computeIfAbsent(keys + word.replace(' ', '_'), key -> messages.getMessage(key, null, word, locale));
    }

    /** The table with headings and words for kinds in English; what is none of ours stands as it was written. */
    Table inEnglish(Table table, Iterable<RowKind<?>> kinds) {
        Map<String, String> headings = new HashMap<>();
        Map<String, Map<String, String>> words = new HashMap<>();
        for (RowKind<?> kind : kinds) {
            for (Column column : kind.columns()) {
                headings.putIfAbsent(Column.plain(heading(column.name())), column.name());
                Map<String, String> here = new HashMap<>();
                column.words().forEach(word -> here.put(plain(word(word)), word));
                words.merge(column.name(), here, (one, other) -> one.isEmpty() ? other : one);
            }
        }
        List<String> names = table.heading().cells().stream()
                .map(cell -> headings.getOrDefault(Column.plain(cell), Column.plain(cell)))
                .toList();
        List<String> heading = new ArrayList<>();
        for (String cell : table.heading().cells()) {
            String name = headings.get(Column.plain(cell));
            String unit = Column.bracketed(cell);
            boolean ours = name != null && !name.equals(Column.plain(cell));
            heading.add(!ours ? cell : unit == null ? name : name + " (" + unit + ")");
        }
        List<Table.Line> lines = table.lines().stream()
                .map(line -> new Table.Line(line.number(), inEnglish(line.cells(), names, words)))
                .toList();
        return new Table(table.file(), new Table.Line(table.heading().number(), heading), lines);
    }

    private static List<String> inEnglish(
            List<String> cells, List<String> names, Map<String, Map<String, String>> words) {
        List<String> english = new ArrayList<>();
        for (int at = 0; at < cells.size(); at++) {
            Map<String, String> here = at < names.size() ? words.getOrDefault(names.get(at), Map.of()) : Map.of();
            english.add(here.getOrDefault(plain(cells.get(at)), cells.get(at)));
        }
        return english;
    }

    private static String plain(String word) {
        return BLANKS.matcher(word.strip().toLowerCase(Locale.ROOT)).replaceAll(" ");
    }
}
