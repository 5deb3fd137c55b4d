package freshet.measures;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * The quantities that people type and read, each with its unit inside, its unit for either system, and every unit that may be
 * typed. Factors: NIST SP 811 (2008), appendix B; the US gallon is 231 cubic inches, the inch 25.4 mm, exactly.
 */
public enum Quantity {
    /** m³/h inside. */
    FLOW(
            new Unit("gpm", 0.2271247070, 1),
            new Unit("m³/h", 1, 2),
            of("gpm", 0.2271247070),
            of("gal/min", 0.2271247070),
            of("gph", 0.2271247070 / 60),
            of("gal/h", 0.2271247070 / 60),
            of("m3/h", 1),
            of("m³/h", 1),
            of("l/min", 0.06),
            of("lpm", 0.06),
            of("l/s", 3.6),
            of("l/h", 0.001)),
    /** Metres of water inside; a pressure may be typed and is read as its head of water at 15 °C. */
    HEAD(
            new Unit("ft", 0.3048, 1),
            new Unit("m", 1, 2),
            of("ft", 0.3048),
            of("feet", 0.3048),
            of("'", 0.3048),
            of("m", 1),
            of("psi", 6894.757293168 / (999.1026 * 9.80665)),
            of("kpa", 1000 / (999.1026 * 9.80665)),
            of("bar", 1e5 / (999.1026 * 9.80665))),
    /** Metres inside. */
    LENGTH(
            new Unit("ft", 0.3048, 0),
            new Unit("m", 1, 1),
            of("ft", 0.3048),
            of("feet", 0.3048),
            of("'", 0.3048),
            of("m", 1),
            of("in", 0.0254),
            of("cm", 0.01),
            of("yd", 0.9144)),
    /** Metres a second inside. */
    VELOCITY(new Unit("ft/s", 0.3048, 1), new Unit("m/s", 1, 2), of("ft/s", 0.3048), of("m/s", 1)),
    /** Millimetres inside. */
    BORE(
            new Unit("in", 25.4, 3),
            new Unit("mm", 1, 1),
            of("in", 25.4),
            of("inch", 25.4),
            of("\"", 25.4),
            of("mm", 1),
            of("cm", 10)),
    /** Litres inside. */
    VOLUME(
            new Unit("gal", 3.785411784, 1),
            new Unit("L", 1, 1),
            of("gal", 3.785411784),
            of("gallons", 3.785411784),
            of("l", 1),
            of("litres", 1),
            of("liters", 1),
            of("m3", 1000),
            of("m³", 1000),
            of("ft3", 28.316846592)),
    /** Square metres inside. */
    AREA(
            new Unit("ft²", 0.09290304, 0),
            new Unit("m²", 1, 1),
            of("ft²", 0.09290304),
            of("ft2", 0.09290304),
            of("m²", 1),
            of("m2", 1)),
    /** Kilopascals inside. */
    PRESSURE(
            new Unit("psi", 6.894757293, 1),
            new Unit("kPa", 1, 1),
            of("psi", 6.894757293),
            of("kpa", 1),
            of("bar", 100),
            of("inhg", 3.386389),
            of("m", 999.1026 * 9.80665 / 1000),
            of("ft", 0.3048 * 999.1026 * 9.80665 / 1000)),
    /** Degrees Celsius inside. */
    TEMPERATURE(
            new Unit("°F", 5.0 / 9, 0),
            new Unit("°C", 1, 0),
            of("f", 5.0 / 9),
            of("°f", 5.0 / 9),
            of("c", 1),
            of("°c", 1)),
    /** Volts either way. */
    VOLTAGE(new Unit("V", 1, 0), new Unit("V", 1, 0), of("v", 1)),
    /** Amperes either way. */
    CURRENT(new Unit("A", 1, 1), new Unit("A", 1, 1), of("a", 1), of("amps", 1)),
    /** Watts inside. */
    POWER(new Unit("hp", 745.6998716, 2), new Unit("W", 1, 0), of("hp", 745.6998716), of("w", 1), of("kw", 1000));

    private static final char NO_BREAK_SPACE = '\u00a0';
    private static final String FRACTIONS = "¼½¾⅓⅔⅛⅜⅝⅞";
    /** A number as wide as it goes, then a unit that begins with a letter or a mark. */
    private static final Pattern TYPED = Pattern.compile("([-+\u2212]?[\\d.,/\u2044\u00a0\u202f\\s" + FRACTIONS
            + "-]*[\\d." + FRACTIONS + "])\\s*([\\p{L}°'\"]\\S*)");

    private static final double F_AT_0_C = 32;

    private final Unit us;
    private final Unit si;
    private final Map<String, Double> typed = new LinkedHashMap<>();

    Quantity(Unit us, Unit si, Typed... units) {
        this.us = us;
        this.si = si;
        for (Typed unit : units) {
            typed.put(unit.name(), unit.factor());
        }
    }

    private record Unit(String name, double factor, int decimals) {}

    private record Typed(String name, double factor) {}

    private static Typed of(String name, double factor) {
        return new Typed(name, factor);
    }

    /** The name of the unit that people of this system read. */
    public String unit(UnitSystem system) {
        return in(system).name();
    }

    /**
     * The value, in the unit inside, of what a person typed; a bare number is in the unit of the person's system.
     *
     * @throws NotAMeasure when it is no number or a unit of another kind
     */
    public double parse(String text, UnitSystem system) {
        if (text.length() > Numbers.LONGEST) {
            throw new NotAMeasure("measures.tooLong", Numbers.LONGEST);
        }
        Matcher parts = TYPED.matcher(Numbers.blanks(text));
        if (!parts.matches()) {
            return inside(Numbers.parse(text), in(system).factor(), in(system).name());
        }
        String name = parts.group(2).toLowerCase(Locale.ROOT).replaceAll("\\.$", "");
        Double factor = typed.get(name);
        if (factor == null) {
            throw new NotAMeasure("measures.otherUnit", text.strip(), parts.group(2), String.join(", ", commonUnits()));
        }
        return inside(Numbers.parse(parts.group(1)), factor, name);
    }

    /** The number alone in the person's unit, rounded for reading. */
    public String number(double inside, UnitSystem system) {
        Unit unit = in(system);
        return Show.decimals(outside(inside, unit), unit.decimals());
    }

    /** The number with its unit, a no-break space between. */
    public String show(double inside, UnitSystem system) {
        return number(inside, system) + NO_BREAK_SPACE + unit(system);
    }

    /** A difference, such as an uncertainty: no zero offset, one more digit than the value would have. */
    public String showDifference(double inside, UnitSystem system) {
        return Show.decimals(inside / in(system).factor(), in(system).decimals()) + NO_BREAK_SPACE + unit(system);
    }

    /** The value for refilling a field, short but without loss that a person could see (six significant digits). */
    public String input(double inside, UnitSystem system) {
        return Show.plain(outside(inside, in(system)));
    }

    /**
     * What a person likely meant whose text gives a value that is not usual: the same number in another unit that it is mixed up with,
     * or with its point one place off; none when no such reading is usual either.
     */
    public Optional<String> meant(String text, UnitSystem system, double low, double high) {
        Matcher parts = TYPED.matcher(Numbers.blanks(text));
        boolean bare = !parts.matches();
        String number = bare ? text.strip() : parts.group(1).strip();
        String own = bare ? unit(system) : parts.group(2);
        double middle = low > 0 ? Math.sqrt(low * high) : (low + high) / 2;
        Optional<String> unit = typed.keySet().stream()
                .filter(name -> !name.equalsIgnoreCase(own))
                .map(name -> number + " " + written(name))
                .filter(meant -> usual(parse(meant, system), low, high))
                .min(Comparator.comparing((String meant) -> !isCommon(meant.substring(number.length() + 1)))
                        .thenComparingDouble(meant ->
                                Math.abs(Math.log(Math.max(parse(meant, system), 1e-9) / Math.max(middle, 1e-9)))));
        return unit.isPresent()
                ? unit
                : Stream.of(0.1, 10.0)
                        .map(places -> Show.plain(Numbers.parse(number) * places) + " " + own)
                        .filter(meant -> usual(parse(meant, system), low, high))
                        .findFirst();
    }

    private String written(String name) {
        return name.equalsIgnoreCase(us.name()) ? us.name() : name.equalsIgnoreCase(si.name()) ? si.name() : name;
    }

    private boolean isCommon(String unit) {
        return unit.equalsIgnoreCase(us.name()) || unit.equalsIgnoreCase(si.name());
    }

    private static boolean usual(double value, double low, double high) {
        double slack = 1e-9 * Math.max(Math.abs(low), Math.abs(high));
        return value >= low - slack && value <= high + slack;
    }

    private List<String> commonUnits() {
        List<String> names = new ArrayList<>(List.of(us.name()));
        if (!us.name().equals(si.name())) {
            names.add(si.name());
        }
        return names;
    }

    private Unit in(UnitSystem system) {
        return system == UnitSystem.US ? us : si;
    }

    private double inside(double number, double factor, String unit) {
        boolean fahrenheit =
                this == TEMPERATURE && unit.toLowerCase(Locale.ROOT).endsWith("f");
        return (fahrenheit ? number - F_AT_0_C : number) * factor;
    }

    private double outside(double inside, Unit unit) {
        double value = inside / unit.factor();
        return this == TEMPERATURE && unit == us ? value + F_AT_0_C : value;
    }
}
