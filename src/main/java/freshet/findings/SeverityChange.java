package freshet.findings;

import java.time.Instant;

/** A severity that was changed, with the reason. */
public record SeverityChange(int was, int became, String why, Instant at, String byName) {}
