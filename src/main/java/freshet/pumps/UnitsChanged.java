package freshet.pumps;

import java.util.Set;

/** Something that planning depends on was changed for these units: registered, moved, retired, or another kind of pump. */
public record UnitsChanged(Set<Long> unitIds) {}
