package freshet.jobs;

import freshet.measures.Usual;
import freshet.people.Typed;
import org.jspecify.annotations.Nullable;

/** Reads what was typed and refuses, at its field, what no job can have. */
record Bounds(Typed typed) {

    /** In the unit inside; null when nothing, no measure, or one outside of low and high was typed. Asks about what is not usual. */
    @Nullable
    Double quantity(String field, @Nullable String text, Usual usual, double low, double high) {
        Double value = within(field, typed.quantity(field, text, usual.quantity()), low, high);
        return typed.usual(field, text, usual.quantity(), value, usual.low(), usual.high());
    }

    /** Hours, likewise. */
    @Nullable
    Double hours(String field, @Nullable String text, double low, double high) {
        return within(field, typed.hours(field, text), low, high);
    }

    /** A plain number, likewise. */
    @Nullable
    Double number(String field, @Nullable String text, double low, double high) {
        return within(field, typed.number(field, text), low, high);
    }

    private @Nullable Double within(String field, @Nullable Double value, double low, double high) {
        if (value != null && !(value >= low && value <= high)) {
            typed.wrong(field, "jobs.outOfRange");
            return null;
        }
        return value;
    }
}
