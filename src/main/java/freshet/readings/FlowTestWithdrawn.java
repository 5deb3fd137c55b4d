package freshet.readings;

/** A flow test of a unit was taken back; what was concluded from it no longer stands. */
public record FlowTestWithdrawn(long unitId, long testId) {}
