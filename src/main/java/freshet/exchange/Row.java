package freshet.exchange;

import freshet.measures.NotAMeasure;
import freshet.measures.Numbers;
import freshet.measures.Quantity;
import freshet.measures.UnitSystem;
import freshet.measures.Usual;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.Locale;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** One row of a file being read; what cannot be read is said once, at its column, and makes the row wrong. */
final class Row {

    /** No name in the register is longer. */
    static final int NAME = 100;

    static final int NOTE = 2000;

    final String file;
    final int line;
    private final Heading heading;
    private final FileWords words;
    private final UnitSystem reader;
    private final Consumer<Problem> questions;
    private final Table.Line cells;
    private final Consumer<Problem> problems;
    private boolean wrong;
    private boolean waiting;

    Row(
            String file,
            Heading heading,
            Table.Line cells,
            FileWords words,
            UnitSystem reader,
            Consumer<Problem> problems,
            Consumer<Problem> questions) {
        this.reader = reader;
        this.questions = questions;
        this.words = words;
        this.file = file;
        this.line = cells.number();
        this.heading = heading;
        this.cells = cells;
        this.problems = problems;
    }

    boolean wrong() {
        return wrong;
    }

    /** It names something whose own row has to be put right first. */
    boolean waiting() {
        return waiting;
    }

    void waits() {
        waiting = true;
    }

    void wrong(@Nullable String column, String code, Object... arguments) {
        wrong = true;
        problems.accept(Problem.at(file, line, column, code, arguments));
    }

    void wrong(Problem problem) {
        wrong = true;
        problems.accept(problem);
    }

    /** Whether its cells stand under their headings; after one comma too many nothing that the row says can be believed. */
    boolean stands() {
        int most = heading.width();
        if (cells.cells().size() > most) {
            wrong(null, "exchange.tooManyCells", String.valueOf(cells.cells().size()), String.valueOf(most));
            return false;
        }
        for (int at = 0; at < most; at++) {
            if (!heading.named(at) && !cells.cell(at).isBlank()) {
                wrong(null, "exchange.noHeading", cells.cell(at).strip());
                return false;
            }
        }
        return true;
    }

    /** The heading of a column as the reader writes it. */
    String heading(String column) {
        return words.heading(column);
    }

    /** Whether the file has the column; one that it has not leaves what stands in the register. */
    boolean has(String column) {
        return heading.has(column);
    }

    /** The text of a cell; null when it is empty or the file has no such column. */
    @Nullable
    String text(String column) {
        int place = heading.place(column);
        String text = place < 0 ? "" : Written.unguarded(cells.cell(place).strip());
        return text.isEmpty() ? null : text;
    }

    /** What the cell says, or what stands when the file has no such column. */
    @Nullable
    String text(String column, @Nullable String stands) {
        return has(column) ? text(column) : stands;
    }

    /** The text of a cell that must not be empty; an empty text when it is. */
    String needed(String column) {
        String text = text(column);
        if (text == null) {
            wrong(column, "exchange.missing", words.heading(column));
            return "";
        }
        return text;
    }

    /** One of a few words, whatever their case; the first when it is wrong. */
    <E extends Enum<E>> E choice(String column, Class<E> choices) {
        String text = needed(column);
        E found = oneOf(text, choices);
        if (found == null && !text.isEmpty()) {
            String all = Arrays.stream(choices.getEnumConstants())
                    .map(choice -> words.word(Written.word(choice)))
                    .collect(Collectors.joining(", "));
            wrong(column, "exchange.choice", text, all);
        }
        return found == null ? choices.getEnumConstants()[0] : found;
    }

    static <E extends Enum<E>> @Nullable E oneOf(String text, Class<E> choices) {
        String word = text.toUpperCase(Locale.ROOT).replaceAll("[\\s_-]+", "_");
        return Arrays.stream(choices.getEnumConstants())
                .filter(each -> each.name().equals(word))
                .findFirst()
                .orElse(null);
    }

    /** Yes or no; the given one when the cell is empty. */
    boolean yes(String column, boolean otherwise) {
        String text = text(column);
        if (text == null) {
            return otherwise;
        }
        switch (text.toLowerCase(Locale.ROOT)) {
            case "yes", "y", "true", "1", "x", "sí", "si", "s", "verdadero" -> {
                return true;
            }
            case "no", "n", "false", "0", "falso" -> {
                return false;
            }
            default -> {
                wrong(column, "exchange.yesNo", text);
                return otherwise;
            }
        }
    }

    /** A plain number; null when the cell is empty or wrong. */
    @Nullable
    Double number(String column) {
        return read(column, text -> Numbers.parse(withoutWord(column, pointed(text))));
    }

    @Nullable
    BigDecimal exact(String column) {
        return read(column, text -> Numbers.parseExact(withoutWord(column, pointed(text))));
    }

    private String withoutWord(String column, String text) {
        String word = heading.column(column).word();
        return word != null && text.toLowerCase(Locale.ROOT).endsWith(word.toLowerCase(Locale.ROOT))
                ? text.substring(0, text.length() - word.length())
                : text;
    }

    /** A measured value in the unit inside; its unit stands in the cell or in the heading. */
    @Nullable
    Double measure(String column) {
        Quantity quantity = heading.column(column).quantity();
        if (quantity == null) {
            throw new IllegalArgumentException(column + " measures nothing");
        }
        return read(column, text -> {
            String unit = heading.unit(column);
            boolean bare = bare(pointed(text));
            if (bare && unit == null) {
                wrong(
                        column,
                        "exchange.unitMissing",
                        text,
                        text + " " + quantity.unit(UnitSystem.US),
                        text + " " + quantity.unit(UnitSystem.SI),
                        words.heading(column) + " (" + quantity.unit(UnitSystem.US) + ")");
                return null;
            }
            return quantity.parse(bare ? text + " " + unit : text, UnitSystem.SI);
        });
    }

    /** The same, and asks about what is not usual; the row is taken in all the same. */
    @Nullable
    Double measure(String column, Usual usual) {
        Double value = measure(column);
        Quantity quantity = usual.quantity();
        if (value != null && !(value >= usual.low() && value <= usual.high())) {
            questions.accept(Problem.at(
                    file,
                    line,
                    column,
                    "measures.unusual",
                    quantity.show(value, reader),
                    quantity.show(usual.low(), reader),
                    quantity.show(usual.high(), reader)));
        }
        return value;
    }

    /** The unit in which a cell is, its own or the heading's, in small letters; null when it is empty or has none. */
    @Nullable
    String unit(String column) {
        String text = text(column);
        if (text == null) {
            return null;
        }
        String own = text.replaceAll("^[^\\p{L}°'\"]*", "");
        String unit = own.isEmpty() ? heading.unit(column) : own;
        return unit == null ? null : unit.toLowerCase(Locale.ROOT);
    }

    /** A comma in a number means thousands here and decimals there, so it is not guessed at. */
    private static String pointed(String text) {
        if (text.contains(",")) {
            throw new Unread("exchange.comma", text, text.replace(",", ""), text.replace(',', '.'));
        }
        return text;
    }

    private static boolean bare(String text) {
        try {
            Numbers.parse(text);
            return true;
        } catch (NotAMeasure hasMore) {
            return text.chars().noneMatch(Character::isLetter) && text.matches(".*\\d");
        }
    }

    @Nullable
    LocalDate date(String column) {
        return read(column, Days::date);
    }

    @Nullable
    Instant moment(String column, ZoneId zone) {
        return read(column, text -> Days.moment(text, zone));
    }

    /** What a cell says; null when it is empty, or wrong, which is then said. */
    <T> @Nullable T read(String column, Function<String, @Nullable T> reading) {
        String text = text(column);
        if (text == null) {
            return null;
        }
        try {
            return reading.apply(text);
        } catch (NotAMeasure no) {
            wrong(column, no.code(), no.arguments());
        } catch (Unread no) {
            wrong(column, no.code(), no.arguments());
        }
        return null;
    }
}
