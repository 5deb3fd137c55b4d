package freshet.reliability;

/** What ended a record of failures: a time set beforehand, or the last failure itself. */
public enum Termination {
    TIME,
    FAILURE
}
