package freshet.exchange;

import freshet.measures.Quantity;
import freshet.measures.UnitSystem;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.IntFunction;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A column that files of a kind may have.
 *
 * @param name its heading, in small letters
 * @param required a file without it is of no use
 * @param quantity what it measures, if it does; its unit then stands in the heading, in brackets, or in the cell
 * @param word the only unit that there is for a plain number, if it has one
 * @param further one more of a series, such as the second window or the third point of a curve
 * @param words the only texts that a cell may hold, if there are only some
 * @param kept what it says stands in the register afterwards
 */
record Column(
        String name,
        boolean required,
        @Nullable Quantity quantity,
        @Nullable String word,
        boolean further,
        List<String> words,
        boolean kept) {

    static Column needed(String name) {
        return new Column(name, true, null, null, false, List.of(), true);
    }

    static Column of(String name) {
        return new Column(name, false, null, null, false, List.of(), true);
    }

    static Column of(String name, Quantity quantity) {
        return new Column(name, false, quantity, null, false, List.of(), true);
    }

    static Column of(String name, String unit) {
        return new Column(name, false, null, unit, false, List.of(), true);
    }

    /** Its cells hold one of these. */
    <E extends Enum<E>> Column oneOf(Class<E> choices) {
        List<String> all =
                Arrays.stream(choices.getEnumConstants()).map(Written::word).toList();
        return new Column(name, required, quantity, word, further, all, kept);
    }

    /** It guides the reading of the row and is not kept. */
    static Column guide(String name) {
        return new Column(name, false, null, null, false, List.of(), false);
    }

    Column furtherUnless(boolean first) {
        return new Column(name, required, quantity, word, !first, words, kept);
    }

    /** Its heading in a file for people who read in this system. */
    public String heading(UnitSystem system) {
        return with(name, system);
    }

    /** Its heading as this reader writes it. */
    public String heading(UnitSystem system, FileWords words) {
        return with(words.heading(name), system);
    }

    private String with(String itsName, UnitSystem system) {
        String unit = quantity == null ? word : quantity.unit(system);
        return unit == null ? itsName : itsName + " (" + unit + ")";
    }

    /** A heading as it is looked up: small letters, single blanks, no brackets at its end. */
    static String plain(String heading) {
        return heading.replaceAll("\\([^)]*\\)\\s*$", "")
                .toLowerCase(Locale.ROOT)
                .replaceAll("[\\s_\\u00a0]+", " ")
                .strip();
    }

    /** What stands in brackets at the end of a heading; null when there are none. */
    static @Nullable String bracketed(String heading) {
        String stripped = heading.strip();
        int open = stripped.lastIndexOf('(');
        return open < 0 || !stripped.endsWith(")")
                ? null
                : stripped.substring(open + 1, stripped.length() - 1).strip();
    }

    /** Units that need not be said, because there is only one. */
    @Nullable
    String onlyUnit() {
        return quantity == Quantity.VOLTAGE || quantity == Quantity.CURRENT ? quantity.unit(UnitSystem.SI) : null;
    }

    static Stream<Column> series(int most, IntFunction<Stream<Column>> columns) {
        return Stream.iterate(1, n -> n <= most, n -> n + 1)
                .flatMap(n -> columns.apply(n).map(column -> column.furtherUnless(n == 1)));
    }
}
