package freshet.exchange;

import freshet.people.Refused.Wrong;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Something to put right in a file.
 *
 * @param line where its row begins; null when it is about the whole file
 * @param column null when it is about the whole row
 * @param code the key of the sentence that says what is wrong, with its arguments
 * @param question it is unusual rather than wrong: the row may say that it was checked
 */
public record Problem(
        String file,
        @Nullable Integer line,
        @Nullable String column,
        String code,
        List<Object> arguments,
        boolean question) {

    static Problem inFile(String file, String code, Object... arguments) {
        return new Problem(file, null, null, code, List.of(arguments), false);
    }

    static Problem at(String file, int line, @Nullable String column, String code, Object... arguments) {
        return new Problem(file, line, column, code, List.of(arguments), false);
    }

    static Problem at(String file, int line, @Nullable String column, Wrong wrong, boolean question) {
        return new Problem(file, line, column, wrong.code(), wrong.arguments(), question);
    }

    /** The arguments as a message wants them. */
    public Object[] said() {
        return arguments.toArray();
    }
}
