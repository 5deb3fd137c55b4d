package freshet.findings;

/** A finding was written about a unit. */
public record FindingOpened(long unitId, long findingId, int severity) {}
