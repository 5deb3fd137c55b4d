package freshet.happenings;

import java.util.Set;

/** Something was reported or withdrawn that touches these units. */
public record HappeningReported(Set<Long> unitIds) {}
