package freshet.rounds;

/** Why one could not get in. */
public enum NoAccessWhy {
    NOBODY_THERE,
    LOCKED,
    REFUSED,
    NOT_SAFE,
    IN_USE,
    OTHER
}
