package freshet.readings;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** One part of a bar and its row in the table beside it: {@code x} and {@code width} are percents of the bar. */
public record Part(String name, double value, String fill, String x, String width) {

    /** The parts side by side; one below 0 has no width, and its number stands in the table. */
    public static List<Part> bar(String[] names, String[] fills, double... values) {
        double whole = 0;
        for (double value : values) {
            whole += Math.max(0, value);
        }
        List<Part> parts = new ArrayList<>();
        double before = 0;
        for (int i = 0; i < values.length; i++) {
            double share = whole > 0 ? Math.max(0, values[i]) / whole : 0;
            parts.add(new Part(names[i], values[i], fills[i], percent(before), percent(share)));
            before += share;
        }
        return parts;
    }

    private static String percent(double share) {
        return String.format(Locale.ROOT, "%.2f%%", 100 * share);
    }
}
