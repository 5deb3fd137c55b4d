package freshet.measures;

/** A typed text that is not a number or not a quantity of the kind asked for; carries a message key and its arguments. */
public final class NotAMeasure extends RuntimeException {

    private final String code;
    private final Object[] arguments;

    NotAMeasure(String code, Object... arguments) {
        super(code + " " + java.util.Arrays.toString(arguments));
        this.code = code;
        this.arguments = arguments.clone();
    }

    /** The key of the sentence that tells a person what is wrong. */
    public String code() {
        return code;
    }

    public Object[] arguments() {
        return arguments.clone();
    }
}
