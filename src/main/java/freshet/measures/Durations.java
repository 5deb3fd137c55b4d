package freshet.measures;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads lengths of time as a stopwatch or a person says them. */
public final class Durations {

    private static final Pattern CLOCK = Pattern.compile("(?:(\\d{1,3}):)?(\\d{1,3}):(\\d{1,2}(?:\\.\\d+)?)");
    private static final Pattern WORDS = Pattern.compile(
            "(?:(\\d+(?:\\.\\d+)?)\\s*h(?:ours?|rs?)?)?\\s*(?:(\\d+(?:\\.\\d+)?)\\s*(?:m(?:in(?:utes?)?)?)?)?",
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
        String text = typed.strip();
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
     * Minutes of work or pumping: "2h 15", "2 h", "135 min", "2:15" (hours and minutes) or a bare number of minutes.
     *
     * @throws NotAMeasure {@code measures.notATime} for any other text
     */
    public static double parseMinutes(String typed) {
        String text = typed.strip();
        Matcher clock = Pattern.compile("(\\d{1,4}):([0-5]\\d)").matcher(text);
        if (clock.matches()) {
            return 60 * Double.parseDouble(clock.group(1)) + Double.parseDouble(clock.group(2));
        }
        Matcher words = WORDS.matcher(text);
        if (!text.isEmpty() && words.matches() && (words.group(1) != null || words.group(2) != null)) {
            double hours = words.group(1) == null ? 0 : Double.parseDouble(words.group(1));
            return 60 * hours + (words.group(2) == null ? 0 : Double.parseDouble(words.group(2)));
        }
        throw new NotAMeasure("measures.notATime", text);
    }
}
