package freshet.measures;

import java.math.BigDecimal;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads plain numbers as people type them: decimals with a point, thousands with commas or spaces, common and mixed fractions. */
public final class Numbers {

    private static final Pattern DECIMAL = Pattern.compile("[-+]?(\\d+(\\.\\d*)?|\\.\\d+)");
    private static final Pattern THOUSANDS = Pattern.compile("[-+]?\\d{1,3}([,\\u00a0\\u202f ]\\d{3})+(\\.\\d*)?");
    private static final Pattern COMMA = Pattern.compile("[-+]?\\d*,\\d+");
    private static final Pattern FRACTION = Pattern.compile("([-+]?)(?:(\\d+)[\\s-]+)?(\\d+)\\s*[/\\u2044]\\s*(\\d+)");
    private static final String VULGAR = "¼½¾⅓⅔⅛⅜⅝⅞";
    private static final String[] VULGAR_TEXT = {"1/4", "1/2", "3/4", "1/3", "2/3", "1/8", "3/8", "5/8", "7/8"};
    static final int LONGEST = 40;

    private Numbers() {}

    /**
     * The number that a person typed.
     *
     * @throws NotAMeasure when the text is no number: {@code measures.comma} for a decimal comma, {@code measures.notANumber} otherwise
     */
    public static double parse(String typed) {
        String text = plain(typed);
        Matcher fraction = FRACTION.matcher(text);
        if (fraction.matches()) {
            return fraction(fraction, typed);
        }
        return decimal(text, typed).doubleValue();
    }

    /** The exact decimal that a person typed, as a meter shows it; fractions are not read. */
    public static BigDecimal parseExact(String typed) {
        return decimal(plain(typed), typed);
    }

    /** The text without blanks around it, and with plain ones for those at which no line breaks, as pages show them. */
    static String blanks(String typed) {
        return typed.replace('\u00a0', ' ').replace('\u202f', ' ').strip();
    }

    private static String plain(String typed) {
        if (typed.length() > LONGEST) {
            throw new NotAMeasure("measures.tooLong", LONGEST);
        }
        String text = typed.strip().replace('\u2212', '-').replace('\u00a0', ' ');
        for (int i = 0; i < VULGAR.length(); i++) {
            text = text.replace(VULGAR.substring(i, i + 1), " " + VULGAR_TEXT[i]);
        }
        return text.strip();
    }

    private static BigDecimal decimal(String text, String typed) {
        if (DECIMAL.matcher(text).matches()) {
            return new BigDecimal(text);
        }
        if (THOUSANDS.matcher(text).matches()) {
            return new BigDecimal(text.replaceAll("[,\\u00a0\\u202f ]", ""));
        }
        if (COMMA.matcher(text).matches()) {
            throw new NotAMeasure("measures.comma", typed.strip(), text.replace(',', '.'));
        }
        throw new NotAMeasure("measures.notANumber", typed.strip());
    }

    private static double fraction(Matcher parts, String typed) {
        double denominator = Double.parseDouble(parts.group(4));
        if (denominator == 0) {
            throw new NotAMeasure("measures.notANumber", typed.strip());
        }
        double whole = parts.group(2) == null ? 0 : Double.parseDouble(parts.group(2));
        double value = whole + Double.parseDouble(parts.group(3)) / denominator;
        return "-".equals(parts.group(1)) ? -value : value;
    }
}
