package freshet.checklists;

import freshet.measures.Quantity;
import freshet.pumps.Ratings;
import org.jspecify.annotations.Nullable;

/** The figure on the model's plate that a check's limits are fractions of. */
public enum RatedBy {
    CURRENT,
    VOLTAGE;

    Quantity quantity() {
        return this == CURRENT ? Quantity.CURRENT : Quantity.VOLTAGE;
    }

    /** The figure, if the plate gives it. */
    public @Nullable Double of(Ratings ratings) {
        return this == CURRENT ? ratings.currentA() : ratings.voltageV();
    }
}
