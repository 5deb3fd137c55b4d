package freshet.care;

import freshet.pumps.Unit;
import java.util.function.Consumer;

/** Work that a unit is left with, to be opened at the end of the transaction, when the rules have been planned by. */
public record FollowUp(long unitId, Consumer<Unit> opening) {}
