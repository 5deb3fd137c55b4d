package freshet.happenings;

/** What can happen to pumps that may make work due. */
public enum HappeningKind {
    STORM,
    POWER_FAILURE,
    DRY_RUN,
    /** The high-water alarm went off. */
    HIGH_WATER,
    /** Pumped sewage. */
    FOUL_USE,
    SALT_USE,
    /** Pumped pool or other chemicals. */
    CHEMICAL_USE,
    HIRE_OUT,
    HIRE_RETURN,
    REPAIRED
}
