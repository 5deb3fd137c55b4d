package freshet.places;

/** What a stretch of the year is for: getting pumps ready, running them, or laying them up. */
public enum WindowKind {
    OPENING,
    RUNNING,
    CLOSING
}
