package freshet.notices;

/** What became of a mail that was owed. */
public enum MailState {
    WAITING,
    SENT,
    /** There was nothing to say. */
    NOTHING,
    /** A newer digest took its place. */
    REPLACED,
    /** It was no longer wanted. */
    STOPPED,
    /** No server took it for too long. */
    GIVEN_UP
}
