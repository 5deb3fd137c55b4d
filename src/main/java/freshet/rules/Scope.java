package freshet.rules;

import freshet.pumps.PumpKind;
import org.jspecify.annotations.Nullable;

/** For which pumps a rule is meant, the wider first. */
public sealed interface Scope {

    record Every() implements Scope {}

    record OfKind(PumpKind kind) implements Scope {}

    record OfModel(long modelId) implements Scope {}

    /** All pumps at a site, or those of one kind there. */
    record AtSite(long siteId, @Nullable PumpKind kind) implements Scope {

        public AtSite(long siteId) {
            this(siteId, null);
        }
    }

    /** Whatever pump stands in a position, or only one of that kind. */
    record InPosition(long positionId, @Nullable PumpKind kind) implements Scope {

        public InPosition(long positionId) {
            this(positionId, null);
        }
    }

    record OfUnit(long unitId) implements Scope {}

    /** How near to a unit it is: of two rules for the same job the one with the higher number holds. */
    default int nearness() {
        if (this instanceof OfUnit) {
            return 5;
        }
        if (this instanceof InPosition) {
            return 4;
        }
        if (this instanceof AtSite) {
            return 3;
        }
        if (this instanceof OfModel) {
            return 2;
        }
        return this instanceof OfKind ? 1 : 0;
    }
}
