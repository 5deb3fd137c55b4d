package freshet.readings;

import java.util.Set;

/** Meters of these units were read, swapped or set right. */
public record ReadingsRecorded(Set<Long> unitIds) {}
