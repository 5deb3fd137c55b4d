package freshet.exchange;

import freshet.measures.NotAMeasure;
import freshet.measures.Quantity;
import freshet.measures.UnitSystem;
import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Values as they are written into cells, so that reading them gives the same values again. */
final class Written {

    /** A text that a spreadsheet program would take for a formula; with one more apostrophe before it than it has, it is text. */
    private static final Pattern FORMULA = Pattern.compile("(?s)'*[=+\\-@\\t\\r].*");

    private Written() {}

    /** A text safe to open in a spreadsheet program. */
    static String guarded(String text) {
        return FORMULA.matcher(text).matches() ? "'" + text : text;
    }

    static String unguarded(String cell) {
        return cell.startsWith("'") && FORMULA.matcher(cell).matches() ? cell.substring(1) : cell;
    }

    static String text(@Nullable String text) {
        return text == null ? "" : text.strip();
    }

    /** The word for one of a few choices. */
    static String word(Enum<?> choice) {
        return choice.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    static String yes(boolean yes) {
        return yes ? "yes" : "no";
    }

    static String number(@Nullable Double value) {
        return value == null ? "" : plain(new BigDecimal(Double.toString(value)));
    }

    static String number(@Nullable BigDecimal value) {
        return value == null ? "" : plain(value);
    }

    private static String plain(BigDecimal value) {
        return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
    }

    static String percent(double fraction) {
        return plain(new BigDecimal(Double.toString(fraction)).movePointRight(2));
    }

    /** A bare number in the unit of the heading where that is exact; else the value inside with its own unit. */
    static String measure(@Nullable Double inside, Quantity quantity, UnitSystem system) {
        return inside == null ? "" : measures(List.of(inside), quantity, system).get(0);
    }

    /** The same for values that belong together, all in one unit. */
    static List<String> measures(List<Double> inside, Quantity quantity, UnitSystem system) {
        boolean exact = inside.stream().allMatch(each -> isExact(each, quantity, system));
        return inside.stream()
                .map(each -> exact ? quantity.input(each, system) : number(each) + " " + quantity.unit(UnitSystem.SI))
                .toList();
    }

    private static boolean isExact(double inside, Quantity quantity, UnitSystem system) {
        try {
            return quantity.parse(quantity.input(inside, system), system) == inside;
        } catch (NotAMeasure tooLong) {
            return false;
        }
    }
}
