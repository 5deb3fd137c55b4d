package freshet.people;

/** Nothing of that kind has this id or name; people see the page for what does not exist. */
public final class NotFound extends RuntimeException {

    public NotFound(String what, Object id) {
        super("no " + what + " " + id);
    }
}
