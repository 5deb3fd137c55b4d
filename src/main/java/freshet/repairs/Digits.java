package freshet.repairs;

import org.jspecify.annotations.Nullable;

/** Reads the hidden numbers of forms and of addresses. */
final class Digits {

    private Digits() {}

    /** The version that a form was opened with; -1 when it does not say. */
    static int version(@Nullable String typed) {
        return typed != null && typed.matches("\\d{1,9}") ? Integer.parseInt(typed) : -1;
    }
}
