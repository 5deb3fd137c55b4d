package freshet.pumps;

import java.util.List;

/** All that goes with a unit, one row of many taken in at once. */
public record Kit(long unitId, List<KitItem> items) {}
