package freshet.reliability;

/** A number that a calculation refuses: which one, and a sentence that names value, unit and limit. */
public final class OutOfRange extends IllegalArgumentException {

    private static final long serialVersionUID = 1L;

    private final String field;

    public OutOfRange(String field, String message) {
        super(message);
        this.field = field;
    }

    /** The path of the number in what was asked, such as {@code readings[2].runHours}. */
    public String field() {
        return field;
    }
}
