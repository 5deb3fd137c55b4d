package freshet.wear;

import freshet.readings.ComparedTest;
import org.jspecify.annotations.Nullable;

/** A flow test with the run hours at which it was made, and whether the line goes by it. */
public record Tested(ComparedTest test, @Nullable HoursAt hours, Use use) {

    /** Why a test counts or does not. */
    public enum Use {
        COUNTS,
        BEFORE_REPAIR,
        NO_HOURS,
        NO_FRACTION
    }

    /** Whether it has a place on the sheet. */
    public boolean drawn() {
        return use == Use.COUNTS || use == Use.BEFORE_REPAIR;
    }
}
