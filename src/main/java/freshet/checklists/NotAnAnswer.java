package freshet.checklists;

import freshet.measures.NotAMeasure;

/** A text that does not answer the check; carries a message key and its arguments. */
public final class NotAnAnswer extends RuntimeException {

    private final String code;
    private final transient Object[] arguments;

    NotAnAnswer(String code, Object... arguments) {
        super(code);
        this.code = code;
        this.arguments = arguments.clone();
    }

    NotAnAnswer(NotAMeasure cause) {
        this(cause.code(), cause.arguments());
    }

    public String code() {
        return code;
    }

    public Object[] arguments() {
        return arguments.clone();
    }
}
