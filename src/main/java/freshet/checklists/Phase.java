package freshet.checklists;

/** What a checklist is worked for. */
public enum Phase {
    OPENING,
    /** Laying up; for a kind that stays live all winter, the check before frost. */
    CLOSING,
    /** Each month in use, or the turn of a pump in storage. */
    MONTHLY,
    AFTER_HIRE,
    AFTER_STORM,
    ELECTRICAL,
    /** Before a repaired pump goes back to service. */
    AFTER_REPAIR,
    CAPACITY,
    /** Work that comes by hours, by starts, by the calendar or after something happened. */
    SERVICE
}
