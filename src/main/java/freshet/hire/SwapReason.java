package freshet.hire;

/** Why another unit took the place of one that was out. */
public enum SwapReason {
    /** It was sent for a job that it cannot do. */
    WRONG_PUMP,
    FAILED,
    OTHER
}
