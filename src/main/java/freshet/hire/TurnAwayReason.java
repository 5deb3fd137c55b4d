package freshet.hire;

/** Why somebody who asked for a pump went without one. */
public enum TurnAwayReason {
    ALL_OUT,
    /** There were some, but not proven ready. */
    NOT_READY,
    /** None could do the job. */
    NOT_ABLE,
    /** We keep no such pump. */
    NOT_KEPT,
    OTHER
}
