package freshet.checklists;

import freshet.pumps.Ratings;
import org.jspecify.annotations.Nullable;

/** The figure on the model's plate that a check's limits are fractions of. */
public enum RatedBy {
    CURRENT,
    VOLTAGE;

    /** The figure, if the plate gives it. */
    public @Nullable Double of(Ratings ratings) {
        return this == CURRENT ? ratings.currentA() : ratings.voltageV();
    }
}
