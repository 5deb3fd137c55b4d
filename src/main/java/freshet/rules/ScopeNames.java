package freshet.rules;

import freshet.places.Places;
import freshet.places.Position;
import freshet.places.Site;
import freshet.pumps.PumpKind;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.ToLongFunction;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.context.support.DefaultMessageSourceResolvable;
import org.springframework.stereotype.Component;

/** Says for which pumps rules are meant, by the names of models, places and tags. */
@Component
class ScopeNames {

    private final Pumps pumps;
    private final Places places;

    ScopeNames(Pumps pumps, Places places) {
        this.pumps = pumps;
        this.places = places;
    }

    /** Looks up only what the rules name: most are for a kind. */
    List<RuleRow> rows(List<CareRule> rules) {
        List<Scope> scopes = rules.stream().map(CareRule::scope).toList();
        Map<Long, String> models = ids(scopes, Scope.OfModel.class, Scope.OfModel::modelId).stream()
                .collect(Collectors.toMap(id -> id, id -> pumps.model(id).name()));
        Map<Long, Position> positions = ids(scopes, Scope.InPosition.class, Scope.InPosition::positionId).stream()
                .collect(Collectors.toMap(id -> id, places::position));
        Set<Long> siteIds = ids(scopes, Scope.AtSite.class, Scope.AtSite::siteId);
        positions.values().forEach(position -> siteIds.add(position.siteId()));
        Map<Long, String> sites =
                places.sites(siteIds).values().stream().collect(Collectors.toMap(Site::id, Site::name));
        Map<Long, String> tags = pumps.units(ids(scopes, Scope.OfUnit.class, Scope.OfUnit::unitId)).stream()
                .collect(Collectors.toMap(Unit::id, Unit::tag));
        return rules.stream()
                .map(rule -> new RuleRow(rule, phrase(rule.scope(), models, sites, positions, tags)))
                .toList();
    }

    private static <S extends Scope> Set<Long> ids(List<Scope> scopes, Class<S> kind, ToLongFunction<S> id) {
        Set<Long> ids = new HashSet<>();
        scopes.stream().filter(kind::isInstance).map(kind::cast).forEach(scope -> ids.add(id.applyAsLong(scope)));
        return ids;
    }

    RuleRow row(CareRule rule) {
        return rows(List.of(rule)).get(0);
    }

    private static Phrase phrase(
            Scope scope,
            Map<Long, String> models,
            Map<Long, String> sites,
            Map<Long, Position> positions,
            Map<Long, String> tags) {
        if (scope instanceof Scope.OfUnit unit) {
            return Phrase.of("scope.unit", name(tags.get(unit.unitId())));
        }
        if (scope instanceof Scope.InPosition at) {
            Position position = positions.get(at.positionId());
            String name = position == null ? "" : position.name();
            String site = position == null ? "" : name(sites.get(position.siteId()));
            return at.kind() == null
                    ? Phrase.of("scope.position", name, site)
                    : Phrase.of("scope.position.kind", name, site, words(at.kind()));
        }
        if (scope instanceof Scope.AtSite at) {
            String site = name(sites.get(at.siteId()));
            return at.kind() == null
                    ? Phrase.of("scope.site", site)
                    : Phrase.of("scope.site.kind", site, words(at.kind()));
        }
        if (scope instanceof Scope.OfModel model) {
            return Phrase.of("scope.model", name(models.get(model.modelId())));
        }
        return scope instanceof Scope.OfKind kind
                ? Phrase.of("scope.kind", words(kind.kind()))
                : Phrase.of("scope.every");
    }

    private static String name(@Nullable String found) {
        return found == null ? "" : found;
    }

    private static DefaultMessageSourceResolvable words(PumpKind kind) {
        return new DefaultMessageSourceResolvable("pumps.pumpKind." + kind);
    }
}
