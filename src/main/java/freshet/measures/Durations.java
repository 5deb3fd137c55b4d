package freshet.measures;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads lengths of time as a stopwatch or a person says them. */
public final class Durations {

    private static final Pattern CLOCK = Pattern.compile("(?:(\\d{1,3}):)?(\\d{1,3}):(\\d{1,2}(?:\\.\\d+)?)");
    private static final Pattern WORDS = Pattern.compile(
            "(?:(\\d+(?:\\.\\d+)?)\\s*h(?:ours?|oras?|rs?)?)?\\s*(?:(\\d+(?:\\.\\d+)?)\\s*(?:m(?:in(?:utes?|utos?|s)?)?)?)?",
            Pattern.CASE_INSENSITIVE);
    private static final Pattern SECONDS =
            Pattern.compile("(\\d+(?:\\.\\d+)?|\\.\\d+)\\s*(?:s|sec|seconds?)?", Pattern.CASE_INSENSITIVE);

    private Durations() {}

    /**
     * Seconds on a stopwatch: "113.9", "113.9 s", "1:53.9" or "1:02:03".
     *
     * @throws NotAMeasure {@code measures.notATime} for any other text
     */
    public static double parseSeconds(String typed) {
        String text = Numbers.blanks(typed);
        Matcher seconds = SECONDS.matcher(text);
        if (seconds.matches()) {
            return Double.parseDouble(seconds.group(1));
        }
        Matcher clock = CLOCK.matcher(text);
        if (clock.matches() && Double.parseDouble(clock.group(3)) < 60) {
            double hours = clock.group(1) == null ? 0 : Double.parseDouble(clock.group(1));
            return 3600 * hours + 60 * Double.parseDouble(clock.group(2)) + Double.parseDouble(clock.group(3));
        }
        throw new NotAMeasure("measures.notATime", text);
    }

    /**
     * Hours: "2h 15", "2:15", "45 min", "1,200 h" or a bare number of hours, fractions too.
     *
     * @throws NotAMeasure {@code measures.notHours} for any other text
     */
    public static double parseHours(String typed) {
        try {
            return Numbers.parse(typed);
        } catch (NotAMeasure notBare) {
            if (notBare.code().equals("measures.comma") || notBare.code().equals("measures.tooLong")) {
                throw notBare;
            }
            return parseMinutes(typed.replaceFirst("^\\s*(\\d{1,3}),(\\d{3})\\b", "$1$2"), "measures.notHours") / 60;
        }
    }

    /**
     * Minutes of work or pumping: "2h 15", "2 h", "135 min", "2:15" (hours and minutes) or a bare number of minutes.
     *
     * @throws NotAMeasure {@code measures.notMinutes} for any other text
     */
    public static double parseMinutes(String typed) {
        return parseMinutes(typed, "measures.notMinutes");
    }

    private static double parseMinutes(String typed, String code) {
        String text = Numbers.blanks(typed);
        Matcher clock = Pattern.compile("(\\d{1,4}):([0-5]\\d)").matcher(text);
        if (clock.matches()) {
            return 60 * Double.parseDouble(clock.group(1)) + Double.parseDouble(clock.group(2));
        }
        Matcher words = WORDS.matcher(text);
        if (!text.isEmpty() && words.matches() && (words.group(1) != null || words.group(2) != null)) {
            double hours = words.group(1) == null ? 0 : Double.parseDouble(words.group(1));
            return 60 * hours + (words.group(2) == null ? 0 : Double.parseDouble(words.group(2)));
        }
        throw new NotAMeasure(code, text);
    }
}
