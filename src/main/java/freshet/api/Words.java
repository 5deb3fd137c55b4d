package freshet.api;

import tools.jackson.databind.JsonNode;

/** Values as they are named in a refusal: short, with their unit. */
final class Words {

    private static final int LONGEST = 40;

    private Words() {}

    /** What was given where something else was asked. */
    static String of(JsonNode json) {
        if (json.isObject()) {
            return "an object";
        }
        if (json.isArray()) {
            return "a list";
        }
        return json.isString() ? "the text \"" + shortened(json.stringValue()) + "\"" : shortened(json.toString());
    }

    /** A number with its unit, 20 as "20". */
    static String of(double number, String unit) {
        String digits = number == Math.rint(number) && Math.abs(number) < 1e9
                ? Long.toString((long) number)
                : Double.toString(number);
        String plain = Double.isInfinite(number) ? "a number too large for double precision" : digits;
        return unit.isEmpty() || Double.isInfinite(number) ? plain : plain + " " + unit;
    }

    /** "lie from 0 to 60 °C". */
    static String limits(Asked asked) {
        return "lie from " + of(asked.from(), "") + " to " + of(asked.to(), asked.unit());
    }

    /** Text of a stranger, cut and without what cannot be shown (control characters, halves of a surrogate pair). */
    static String shortened(String text) {
        String cut = text.length() <= LONGEST ? text : text.substring(0, LONGEST) + "…";
        return cut.replaceAll("[\\p{Cntrl}\\p{Cs}]", "?");
    }
}
