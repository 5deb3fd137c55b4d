package freshet.findings;

/** A signed record released a hold. */
public record HoldReleased(long unitId, long holdId, long recordId) {}
