package freshet.wear;

import freshet.findings.Finding;
import org.jspecify.annotations.Nullable;

/** A closed finding of severity 2 or more: something was mended, and the capacity may be another since. */
public record Repair(Finding finding, @Nullable HoursAt hours) {

    /** From this severity on a closed finding counts as a repair. */
    static final int LEAST_SEVERITY = 2;
}
