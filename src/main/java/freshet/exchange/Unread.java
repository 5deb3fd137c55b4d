package freshet.exchange;

import java.util.List;

/** A cell that cannot be read; carries the key of the sentence that says why, with its arguments. */
final class Unread extends RuntimeException {

    private final String code;
    private final transient List<Object> arguments;

    Unread(String code, Object... arguments) {
        super(code);
        this.code = code;
        this.arguments = List.of(arguments);
    }

    String code() {
        return code;
    }

    Object[] arguments() {
        return arguments.toArray();
    }
}
