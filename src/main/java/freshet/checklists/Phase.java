package freshet.checklists;

/** What a checklist is worked for. */
public enum Phase {
    OPENING,
    CLOSING,
    ELECTRICAL,
    CAPACITY
}
