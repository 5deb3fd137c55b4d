package freshet.findings;

/** A finding was judged worse than it was. */
public record FindingRaised(long unitId, long findingId, int severity) {}
