package freshet.rules;

import freshet.people.Typed;
import freshet.places.Places;
import freshet.places.Position;
import freshet.places.Site;
import freshet.pumps.Model;
import freshet.pumps.PumpKind;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Finds the pumps for which a rule is meant by the names that were typed, and the names by the pumps. */
@Component
class ScopeFinder {

    private final Pumps pumps;
    private final Places places;

    ScopeFinder(Pumps pumps, Places places) {
        this.pumps = pumps;
        this.places = places;
    }

    /** Null when nothing is found, which is then among the wrongs at the name's field. */
    @Nullable
    Scope found(ScopeForm form, Typed typed) {
        return switch (form.scope() == null ? ScopeKind.EVERY : form.scope()) {
            case EVERY -> new Scope.Every();
            case KIND -> {
                PumpKind kind = typed.required("kind", form.kind(), "rules.scope.kindMissing");
                yield kind == null ? null : new Scope.OfKind(kind);
            }
            case MODEL ->
                pumps.modelNamed(Typed.textOrEmpty(form.model()))
                        .<Scope>map(model -> new Scope.OfModel(model.id()))
                        .orElseGet(() -> none("model", "rules.scope.noModel", form.model(), typed));
            case SITE ->
                site(form, typed)
                        .<Scope>map(site -> new Scope.AtSite(site.id()))
                        .orElse(null);
            case POSITION -> position(form, typed);
            case UNIT ->
                pumps.unitTagged(Typed.textOrEmpty(form.tag()))
                        .<Scope>map(unit -> new Scope.OfUnit(unit.id()))
                        .orElseGet(() -> none("tag", "rules.scope.noUnit", form.tag(), typed));
        };
    }

    private Optional<Site> site(ScopeForm form, Typed typed) {
        Optional<Site> site = places.siteNamed(Typed.textOrEmpty(form.site()));
        if (site.isEmpty()) {
            none("site", "rules.scope.noSite", form.site(), typed);
        }
        return site;
    }

    private @Nullable Scope position(ScopeForm form, Typed typed) {
        Optional<Site> site = site(form, typed);
        String name = Typed.textOrEmpty(form.position());
        if (site.isEmpty()) {
            return null;
        }
        return places.positions(site.get().id()).stream()
                .filter(position -> position.name().equalsIgnoreCase(name))
                .findFirst()
                .<Scope>map(position -> new Scope.InPosition(position.id()))
                .orElseGet(() -> none("position", "rules.scope.noPosition", form.position(), typed));
    }

    private static @Nullable Scope none(String field, String code, @Nullable String name, Typed typed) {
        typed.wrong(field, code, Typed.textOrEmpty(name));
        return null;
    }

    /** The names of what a rule is meant for. */
    ScopeForm named(Scope scope) {
        if (scope instanceof Scope.OfUnit unit) {
            return ScopeForm.ofUnit(pumps.unit(unit.unitId()).tag());
        }
        if (scope instanceof Scope.InPosition at) {
            return named(places.position(at.positionId()));
        }
        if (scope instanceof Scope.AtSite at) {
            return ScopeForm.atSite(places.site(at.siteId()).name());
        }
        if (scope instanceof Scope.OfModel of) {
            Model model = pumps.model(of.modelId());
            return new ScopeForm(ScopeKind.MODEL, null, model.name(), null, null, null);
        }
        return scope instanceof Scope.OfKind of
                ? ScopeForm.ofKind(of.kind())
                : new ScopeForm(ScopeKind.EVERY, null, null, null, null, null);
    }

    private ScopeForm named(Position position) {
        return ScopeForm.inPosition(places.site(position.siteId()).name(), position.name());
    }

    /** Where a unit stands: its position, or its site when it stands in none. */
    ScopeForm placeOf(Unit unit) {
        Long position = unit.stand().positionId();
        return position == null ? ScopeForm.atSite(unit.stand().siteName()) : named(places.position(position));
    }
}
