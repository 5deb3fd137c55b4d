package freshet.happenings;

import java.util.List;
import java.util.stream.Stream;

/** What can happen to pumps that may make work due. */
public enum HappeningKind {
    STORM,
    POWER_FAILURE,
    DRY_RUN,
    /** The high-water alarm went off. */
    HIGH_WATER,
    /** Pumped sewage. */
    FOUL_USE,
    SALT_USE,
    /** Pumped pool or other chemicals. */
    CHEMICAL_USE,
    HIRE_OUT,
    HIRE_RETURN,
    REPAIRED;

    /** Whether a person reports it; the others follow from a hire or a repair, and are put right there. */
    public boolean byHand() {
        return this != HIRE_OUT && this != HIRE_RETURN && this != REPAIRED;
    }

    static List<HappeningKind> allByHand() {
        return Stream.of(values()).filter(HappeningKind::byHand).toList();
    }
}
