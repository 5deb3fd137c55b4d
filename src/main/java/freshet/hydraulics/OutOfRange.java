package freshet.hydraulics;

import java.util.function.Supplier;

/**
 * A number that this room refuses: the message names value, unit and limit; {@link #field()} says which input it was, as a
 * path such as {@code line.sections[0].innerDiameterMm}; {@link #reason()} is for pages that have their own words.
 */
public final class OutOfRange extends IllegalArgumentException {

    /** The kind of refusal. */
    public enum Reason {
        /** Not a finite number. */
        NOT_A_NUMBER,
        /** Below the lowest or above the highest value allowed. */
        RANGE,
        /** Too few or too many of a list. */
        COUNT,
        /** Values in a list that must rise from one to the next do not. */
        NOT_RISING,
        /** Heads of a curve that must fall from one point to the next do not. */
        NOT_FALLING,
        /** One of two inputs must be given, and none is. */
        MISSING,
        /** Two inputs that exclude each other are both given. */
        CONFLICT,
        /** The measured or wanted head lies at or above the curve's shut-off head. */
        ABOVE_CURVE,
        /** The head lies below, or the flow beyond, the curve's last point. */
        BEYOND_CURVE
    }

    private static final long serialVersionUID = 1L;

    private final String field;
    private final Reason reason;

    /**
     * @param field path of the input, as the caller spells it
     * @param reason the kind of refusal
     * @param message one sentence that names value, unit and limit
     */
    public OutOfRange(String field, Reason reason, String message) {
        super(message);
        this.field = field;
        this.reason = reason;
    }

    /** Path of the input that was refused. */
    public String field() {
        return field;
    }

    /** The kind of refusal. */
    public Reason reason() {
        return reason;
    }

    /** The same refusal, seen from the thing that holds it: {@code "line"} and {@code "liftM"} give {@code "line.liftM"}. */
    public OutOfRange under(String parent) {
        String path = field.isEmpty() ? parent : field.startsWith("[") ? parent + field : parent + "." + field;
        OutOfRange outer = new OutOfRange(path, reason, getMessage());
        outer.setStackTrace(getStackTrace());
        return outer;
    }

    /** Makes a thing and puts {@code parent} before the path of whatever is refused on the way. */
    public static <T> T within(String parent, Supplier<T> making) {
        try {
            return making.get();
        } catch (OutOfRange refused) {
            throw refused.under(parent);
        }
    }

    /** The value itself when it is finite and from {@code low} to {@code high}, both included; else refused. */
    static double check(String field, double value, String unit, double low, double high) {
        if (value >= low && value <= high) {
            return value + 0.0; // no negative zero in an answer
        }
        boolean number = Double.isFinite(value);
        throw new OutOfRange(
                field,
                number ? Reason.RANGE : Reason.NOT_A_NUMBER,
                leaf(field) + " is " + show(value, unit) + "; it must "
                        + (low == high
                                ? "be " + show(low, unit)
                                : "lie from " + show(low, "") + " to " + show(high, unit)));
    }

    /** Refuses a list that is shorter than {@code low} or longer than {@code high}. */
    static void checkCount(String field, int count, String unit, int low, int high) {
        if (count < low || count > high) {
            throw new OutOfRange(
                    field,
                    Reason.COUNT,
                    leaf(field) + " has " + count + " " + unit + "; it must have from " + low + " to " + high + " "
                            + unit);
        }
    }

    /** A flow that no point of the curve gives. */
    static OutOfRange beyondFlow(String field, double flow, double last) {
        return new OutOfRange(
                field,
                Reason.BEYOND_CURVE,
                "flow is " + show(flow, "m³/h") + ", beyond the curve's last point at " + show(last, "m³/h"));
    }

    /** A head that the pump does not reach with any flow. */
    static OutOfRange aboveCurve(String field, double head, double shutOff) {
        return new OutOfRange(
                field,
                Reason.ABOVE_CURVE,
                "total head is " + show(head, "m") + ", not below the curve's shut-off head of " + show(shutOff, "m"));
    }

    /** A head below all of the curve. */
    static OutOfRange belowCurve(String field, double head, double last) {
        return new OutOfRange(
                field,
                Reason.BEYOND_CURVE,
                "total head is " + show(head, "m") + ", below the head of the curve's last point, " + show(last, "m"));
    }

    /** A number as a person would write it, with its unit. */
    static String show(double value, String unit) {
        String digits = value == Math.rint(value) && Math.abs(value) < 1e9
                ? Long.toString((long) value)
                : Double.toString(value);
        return unit.isEmpty() ? digits : digits + " " + unit;
    }

    private static String leaf(String field) {
        String name = field.substring(field.lastIndexOf('.') + 1);
        return name.isEmpty() ? "value" : name;
    }
}
