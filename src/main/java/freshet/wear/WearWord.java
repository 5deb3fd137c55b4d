package freshet.wear;

/** What may be said about the wear of a unit. */
public enum WearWord {
    /** No test that counts has run hours beside it. */
    NOTHING,
    TOO_FEW,
    NO_TREND_YET,
    /** The tests lie on a falling line by their scatter, but the fall is no larger than the doubt stated with them. */
    WITHIN_DOUBT,
    WEARING
}
