package freshet.pumps;

/** What turns the pump. */
public enum Drive {
    SINGLE_PHASE,
    THREE_PHASE,
    BATTERY,
    ENGINE
}
