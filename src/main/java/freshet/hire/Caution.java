package freshet.hire;

import freshet.pumps.Drive;
import freshet.pumps.Unit;
import java.util.List;
import java.util.stream.Stream;

/** What a hirer is told before a pump goes out, each ticked when it was said. */
public enum Caution {
    UNPLUG,
    DRY_RUN,
    ROPE,
    GROUND_FAULT,
    CARBON_MONOXIDE,
    FUEL,
    LIQUID,
    DISCHARGE,
    FROST;

    /** Those that hold for a unit: an engine has no plug, and only an engine has an exhaust. */
    static List<Caution> of(Unit unit) {
        boolean engine = unit.model().drive() == Drive.ENGINE;
        boolean mains = !engine && unit.model().drive() != Drive.BATTERY;
        return Stream.of(values())
                .filter(each -> switch (each) {
                    case UNPLUG, ROPE -> !engine;
                    case GROUND_FAULT -> mains;
                    case CARBON_MONOXIDE, FUEL -> engine;
                    default -> true;
                })
                .toList();
    }
}
