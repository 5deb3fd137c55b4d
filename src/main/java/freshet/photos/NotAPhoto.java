package freshet.photos;

/** Bytes that are no photo we keep, with the message key of the reason. */
final class NotAPhoto extends Exception {

    private final String code;
    private final transient Object[] arguments;

    NotAPhoto(String code, Object... arguments) {
        super(code);
        this.code = code;
        this.arguments = arguments.clone();
    }

    /** It ends before it is whole. */
    static NotAPhoto cut() {
        return new NotAPhoto("photos.cut");
    }

    /** It is of a kind we keep, but cannot be read. */
    static NotAPhoto unreadable() {
        return new NotAPhoto("photos.unreadable");
    }

    String code() {
        return code;
    }

    Object[] arguments() {
        return arguments.clone();
    }
}
