package freshet.pumps;

/** A unit and its place, one row of many taken in at once. */
public record UnitArrival(UnitDraft unit, Whereabouts at) {}
