package freshet.notices;

/** How often a person wants the digest. */
public enum Rhythm {
    NONE,
    DAILY,
    WEEKLY
}
