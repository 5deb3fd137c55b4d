package freshet.rounds;

/** What became of a stop. */
public enum StopState {
    LEFT,
    /** Somebody stood there and could not get in; it is still left. */
    NO_ACCESS,
    /** Signed, by whomever, or seen. */
    DONE,
    /** The task was withdrawn, or the pump retired. */
    WITHDRAWN;

    public boolean left() {
        return this == LEFT || this == NO_ACCESS;
    }
}
