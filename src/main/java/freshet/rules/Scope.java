package freshet.rules;

import freshet.pumps.PumpKind;

/** For which pumps a rule is meant, the wider first. */
public sealed interface Scope {

    record Every() implements Scope {}

    record OfKind(PumpKind kind) implements Scope {}

    record OfModel(long modelId) implements Scope {}

    record AtSite(long siteId) implements Scope {}

    record InPosition(long positionId) implements Scope {}

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
