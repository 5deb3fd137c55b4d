package freshet.findings;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** Reads what a form's choices send. */
final class Choices {

    private Choices() {}

    /** Null when nothing, or nothing that there is, was chosen. */
    static <E extends Enum<E>> @Nullable E one(Class<E> kind, @Nullable String name) {
        return Arrays.stream(kind.getEnumConstants())
                .filter(each -> each.name().equals(name))
                .findFirst()
                .orElse(null);
    }

    /** -1 when none was chosen. */
    static int severity(@Nullable String chosen) {
        return chosen != null && chosen.matches("[0-4]") ? Integer.parseInt(chosen) : -1;
    }

    /** The version that a form was opened with; -1 when it does not say. */
    static int version(@Nullable String typed) {
        return typed != null && typed.matches("\\d{1,9}") ? Integer.parseInt(typed) : -1;
    }
}
