package freshet.jobs;

import freshet.measures.Quantity;
import freshet.people.Typed;
import org.jspecify.annotations.Nullable;

/** Reads what was typed and refuses, at its field, what no job can have. */
record Bounds(Typed typed) {

    /** In the unit inside; null when nothing, no measure, or one outside of low and high was typed. */
    @Nullable
    Double quantity(String field, @Nullable String text, Quantity quantity, double low, double high) {
        return within(field, typed.quantity(field, text, quantity), low, high);
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
