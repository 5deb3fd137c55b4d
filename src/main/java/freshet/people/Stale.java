package freshet.people;

/** Somebody changed it since the form was opened; the form answers 409 and keeps what was typed. */
public final class Stale extends RuntimeException {

    public Stale(String what, Object id) {
        super(what + " " + id + " was changed meanwhile");
    }
}
