package freshet.fleet;

/** What a reason is about; each has its message {@code fleet.reason.<kind>}. */
public enum ReasonKind {
    /** Kept apart or tagged out: what for, since when and by whom. */
    HELD,
    /** An open finding: its severity and its words. */
    FINDING,
    /** A finding that stopped use was closed, and nothing proved the unit since. */
    MENDED_NOT_PROVED,
    /** Run dry, or used in what harms a pump, and nothing proved the unit since; named as what happened is. */
    DRY_RUN,
    FOUL_USE,
    SALT_USE,
    CHEMICAL_USE,
    /** There is no checklist for this kind of pump, so nothing can prove it. */
    NO_CHECKLIST,
    /** Neither an opening nor a flow test was ever signed. */
    NEVER_PROVED,
    /** The last proof is too old. */
    PROOF_OLD,
    /** Laid up and not opened since. */
    LAID_UP,
    /** The days of the opening have begun and it is not signed. */
    OPENING_DUE,
    /** The days of the opening are over and it is not signed. */
    OPENING_LATE,
    /** A check after something happened is to do. */
    CHECK_DUE,
    /** That check, or the test of each month, is late. */
    CHECK_LATE,
    /** Electrical lines were left for a competent person. */
    ELECTRICAL_LEFT,
    /** No electrical test on record. */
    ELECTRICAL_NEVER,
    /** The last electrical test is too old. */
    ELECTRICAL_OLD,
    /** Remaining capacity: full enough, short, low, or gone. */
    CAPACITY,
    CAPACITY_SHORT,
    CAPACITY_LOW,
    CAPACITY_GONE,
    /** Proved by a signed record or a flow test, and until when that holds. */
    PROVED,
    /** Electrically tested, and until when that holds. */
    ELECTRICAL
}
