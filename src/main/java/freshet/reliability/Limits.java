package freshet.reliability;

import java.math.BigDecimal;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** The limits within which this room answers, and the refusal outside them. */
final class Limits {

    /** Longest time of any kind, in hours: over a hundred thousand years. */
    static final double LONGEST_HOURS = 1e9;

    /** Shortest time above zero, in hours (3.6 ms): anything nearer to zero is a slip of the keyboard. */
    static final double SHORTEST_HOURS = 1e-6;

    private Limits() {}

    /** The number itself if it is finite and lies in [least, most]; unit is empty for a pure number. */
    static double within(String field, double value, double least, double most, String unit) {
        // written so that NaN fails
        if (!(value >= least && value <= most)) {
            throw new OutOfRange(
                    field, withUnit(value, unit) + " is outside " + plain(least) + " to " + withUnit(most, unit));
        }
        return value;
    }

    /** The number if it lies in [least, most], most being another number that was asked. */
    static double upTo(String field, double value, double least, double most, String unit, String nameOfMost) {
        if (!(value >= least && value <= most)) {
            throw new OutOfRange(
                    field,
                    withUnit(value, unit) + " is outside " + plain(least) + " to " + nameOfMost + ", "
                            + withUnit(most, unit));
        }
        return value;
    }

    static <T> T given(String field, @Nullable T value) {
        if (value == null) {
            throw new OutOfRange(field, "is missing");
        }
        return value;
    }

    static int within(String field, int value, int least, int most, String unit) {
        within(field, (double) value, least, most, unit);
        return value;
    }

    static double hours(String field, double value) {
        return within(field, value, 0, LONGEST_HOURS, "h");
    }

    /** Zero, or long enough to take a logarithm of. */
    static double lifeHours(String field, double value) {
        return value == 0 ? 0 : within(field, value, SHORTEST_HOURS, LONGEST_HOURS, "h");
    }

    /** A confidence level; below one half a lower bound would lie above its estimate. */
    static double level(double value) {
        return within("level", value, 0.5, 0.999999, "");
    }

    static <T> List<T> list(String field, @Nullable List<? extends @Nullable T> values, int least, int most) {
        if (values == null) {
            throw new OutOfRange(field, "is missing; give " + least + " to " + most + " entries");
        }
        if (values.size() < least || values.size() > most) {
            throw new OutOfRange(field, values.size() + " entries are outside " + least + " to " + most + " entries");
        }
        for (int i = 0; i < values.size(); i++) {
            if (values.get(i) == null) {
                throw new OutOfRange(field + "[" + i + "]", "is missing");
            }
        }
        return values.stream().<T>map(Objects::requireNonNull).toList();
    }

    /** The number, or null where the arithmetic has no finite answer. */
    static @Nullable Double finite(double value) {
        return Double.isFinite(value) ? (Double) value : null;
    }

    static String withUnit(double value, String unit) {
        return unit.isEmpty() ? plain(value) : plain(value) + " " + unit;
    }

    /** 20 as "20", 0.95 as "0.95", and nothing longer than a person would read. */
    private static String plain(double value) {
        double size = Math.abs(value);
        if (value == 0 || !(size >= 1e-9 && size < 1e15)) {
            return value == 0 ? "0" : Double.toString(value);
        }
        return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }
}
