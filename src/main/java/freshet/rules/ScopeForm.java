package freshet.rules;

import freshet.pumps.PumpKind;
import org.jspecify.annotations.Nullable;

/** For which pumps a rule is meant, by the names that a person types. */
record ScopeForm(
        @Nullable ScopeKind scope,
        @Nullable PumpKind kind,
        @Nullable String model,
        @Nullable String site,
        @Nullable String position,
        @Nullable String tag) {

    static ScopeForm ofKind(PumpKind kind) {
        return new ScopeForm(ScopeKind.KIND, kind, null, null, null, null);
    }

    static ScopeForm ofUnit(String tag) {
        return new ScopeForm(ScopeKind.UNIT, null, null, null, null, tag);
    }

    static ScopeForm atSite(String site) {
        return new ScopeForm(ScopeKind.SITE, null, null, site, null, null);
    }

    static ScopeForm inPosition(String site, String position) {
        return new ScopeForm(ScopeKind.POSITION, null, null, site, position, null);
    }
}
