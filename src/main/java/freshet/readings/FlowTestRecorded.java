package freshet.readings;

/** A flow test of a unit was kept. */
public record FlowTestRecorded(long unitId, long testId) {}
