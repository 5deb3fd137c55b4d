package freshet.care;

import java.util.Set;

/** Tasks or records of these units were changed. */
public record CareChanged(Set<Long> unitIds) {}
