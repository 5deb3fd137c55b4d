package freshet.people;

/** This person may not do that. */
public final class NotAllowed extends RuntimeException {

    public NotAllowed(String what) {
        super(what);
    }
}
