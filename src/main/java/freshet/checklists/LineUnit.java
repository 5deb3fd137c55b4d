package freshet.checklists;

import freshet.measures.NotAMeasure;
import freshet.measures.Numbers;
import freshet.measures.Quantity;
import freshet.measures.UnitSystem;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** The unit of a number check: one that people read in their own system, or one that is the same for all, such as ohms. */
final class LineUnit {

    private static final String DEGREES = "°C";

    private static final Map<String, Quantity> QUANTITIES = Map.of(
            "mm",
            Quantity.BORE,
            "m",
            Quantity.LENGTH,
            "A",
            Quantity.CURRENT,
            "kPa",
            Quantity.PRESSURE,
            DEGREES,
            Quantity.TEMPERATURE);

    /** Those that everybody reads alike, with what else is typed for them, in small letters. */
    private static final Map<String, Set<String>> ALSO_TYPED = Map.of(
            "V", Set.of("v", "volt", "volts"),
            "Ω", Set.of("ω", "ohm", "ohms"),
            "MΩ", Set.of("mω", "mohm", "mohms", "megohm", "megohms"),
            "s", Set.of("s", "sec", "seconds"),
            "min", Set.of("min", "minutes"),
            "h", Set.of("h", "hours"),
            "%", Set.of("%", "percent"),
            "ppm", Set.of("ppm"),
            "rpm", Set.of("rpm"));

    private static final List<String> ALL =
            List.of("A", "V", "Ω", "MΩ", "mm", "m", "kPa", DEGREES, "s", "min", "h", "%", "ppm", "rpm");

    private static final Pattern TYPED = Pattern.compile("(.*?[\\d.])\\s*([^\\d.,\\s].*)?");
    private static final String NO_BREAK_SPACE = "\u00a0";

    private final String unit;
    private final @Nullable Quantity quantity;

    private LineUnit(String unit) {
        this.unit = unit;
        quantity = QUANTITIES.get(unit);
    }

    /** Every unit that a check may be measured in. */
    static List<String> all() {
        return ALL;
    }

    static boolean known(String unit) {
        return ALL.contains(unit);
    }

    static boolean mayBeNegative(@Nullable String unit) {
        return DEGREES.equals(unit);
    }

    static LineUnit of(String unit) {
        if (!known(unit)) {
            throw new IllegalArgumentException("no check is measured in " + unit);
        }
        return new LineUnit(unit);
    }

    /** What it measures; null for a unit that everybody reads alike. */
    @Nullable
    Quantity quantity() {
        return quantity;
    }

    /** The unit as this reader sees it beside the field. */
    String read(UnitSystem system) {
        return quantity == null ? unit : quantity.unit(system);
    }

    /** The number in the unit of the check. */
    double parse(String text, UnitSystem system) {
        try {
            if (quantity != null) {
                return quantity.parse(text, system);
            }
            Matcher typed = TYPED.matcher(text.strip());
            if (typed.matches() && typed.group(2) != null) {
                String name = typed.group(2).strip();
                // a capital M is mega, a small one would be milli
                if (!ALSO_TYPED.getOrDefault(unit, Set.of()).contains(name.toLowerCase(Locale.ROOT))
                        || name.equals("mΩ")) {
                    throw new NotAnAnswer("checklists.otherUnit", name, unit);
                }
                return Numbers.parse(typed.group(1));
            }
            return Numbers.parse(text);
        } catch (NotAMeasure wrong) {
            throw new NotAnAnswer(wrong);
        }
    }

    /** The number with its unit as this reader sees it. */
    String show(double number, UnitSystem system) {
        return quantity == null ? plain(number) + NO_BREAK_SPACE + unit : quantity.show(number, system);
    }

    /** The number for refilling a field, in the unit that this reader sees. */
    String input(double number, UnitSystem system) {
        if (quantity != null) {
            return quantity.input(number, system);
        }
        BigDecimal rounded = new BigDecimal(number).round(new MathContext(6));
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }

    /** What was typed, with the unit it was meant in, so that anybody reads the same. */
    String kept(String text, UnitSystem system) {
        String typed = text.strip();
        boolean bare = quantity != null
                && !quantity.unit(UnitSystem.US).equals(quantity.unit(UnitSystem.SI))
                && endsInDigit(typed);
        return bare ? typed + " " + read(system) : typed;
    }

    private static boolean endsInDigit(String text) {
        return !text.isEmpty() && (Character.isDigit(text.charAt(text.length() - 1)) || text.endsWith("."));
    }

    private static String plain(double number) {
        BigDecimal rounded = new BigDecimal(number).round(new MathContext(3));
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }
}
