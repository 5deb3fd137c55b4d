package freshet.pumps;

/** What a pump is made for. */
public enum PumpKind {
    UTILITY_SUBMERSIBLE,
    SUMP_WITH_FLOAT,
    SEWAGE,
    ENGINE_TRASH,
    BATTERY_BACKUP,
    CIRCULATOR
}
