package freshet.hire;

import freshet.happenings.HappeningKind;
import org.jspecify.annotations.Nullable;

/** What a unit pumped while it was out, as the hirer says and the yard smells. */
public enum Liquid {
    CLEAN(null),
    FOUL(HappeningKind.FOUL_USE),
    SALT(HappeningKind.SALT_USE),
    CHEMICAL(HappeningKind.CHEMICAL_USE),
    UNKNOWN(null);

    private final @Nullable HappeningKind happening;

    Liquid(@Nullable HappeningKind happening) {
        this.happening = happening;
    }

    /** What it is reported as; null when there is nothing to report. */
    @Nullable
    HappeningKind happening() {
        return happening;
    }
}
