package freshet.notices;

/** What a mail is for. */
public enum MailKind {
    /** Asks whether mail is welcome at an address. */
    ADDRESS,
    /** What is late, due soon and not ready. */
    DIGEST,
    /** Work that is late by more days than an owner wants to wait. */
    OVERDUE,
    /** A finding that can hurt somebody. */
    DANGER
}
