package freshet.findings;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** How long and why the work for a finding is to be put off; {@code decidedBy} null is whoever writes it down. */
public record WaiverDraft(
        @Nullable String why,
        @Nullable String decidedBy,
        @Nullable LocalDate until) {}
