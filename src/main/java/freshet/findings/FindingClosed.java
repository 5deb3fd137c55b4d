package freshet.findings;

/** A finding about a unit was closed. */
public record FindingClosed(long unitId, long findingId, int severity) {}
