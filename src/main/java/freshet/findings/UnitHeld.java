package freshet.findings;

/** A unit is held from now on. */
public record UnitHeld(long unitId, long holdId, HoldKind kind) {}
