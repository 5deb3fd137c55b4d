package freshet.hire;

import freshet.pumps.KitKind;
import org.jspecify.annotations.Nullable;

/** One line of the kit of a hire: how many the unit's list has, how many went out, and how many came back. */
public record Piece(
        int ordinal,
        KitKind kind,
        String description,
        int quantity,
        int quantityOut,
        @Nullable Integer quantityIn) {

    /** How many did not come back; 0 while it is out. */
    public int missing() {
        return quantityIn == null ? 0 : quantityOut - quantityIn;
    }
}
