package freshet.care;

/** Where a task stands: to do, signed, or withdrawn with a reason because what made it due no longer holds. */
public enum TaskState {
    OPEN,
    SIGNED,
    WITHDRAWN
}
