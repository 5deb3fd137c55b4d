package freshet.findings;

/** A finding was judged otherwise, or its work was put off. */
public record FindingChanged(long unitId, long findingId) {}
