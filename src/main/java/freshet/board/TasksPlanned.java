package freshet.board;

import java.util.Set;

/** The tasks of these units were planned anew. */
public record TasksPlanned(Set<Long> unitIds) {}
