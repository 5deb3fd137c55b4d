package freshet.findings;

/** What a failure came from; that nobody knows is an honest answer. */
public enum Cause {
    FROST,
    STORED_WET,
    RAN_DRY,
    DEBRIS,
    SAND,
    WRONG_USE,
    NARROW_LINE,
    LOW_VOLTAGE,
    WRONG_ROTATION,
    FLOAT_SNAGGED,
    BATTERY_AGE,
    STALE_FUEL,
    CORROSION,
    AGE,
    INSTALLATION,
    EARLIER_REPAIR,
    USER_DAMAGE,
    VERMIN,
    SURGE,
    UNKNOWN
}
