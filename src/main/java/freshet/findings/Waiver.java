package freshet.findings;

import java.time.Instant;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** That the work for a finding was put off: to the end of which day at the site, why, and by whom. */
public record Waiver(
        int severity, String why, @Nullable String decidedBy, LocalDate until, Instant putOffAt, String putOffByName) {

    /** Who answers for it. */
    public String by() {
        return decidedBy == null ? putOffByName : decidedBy;
    }

    public boolean runsOn(LocalDate today) {
        return !until.isBefore(today);
    }
}
