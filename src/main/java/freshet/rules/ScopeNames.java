package freshet.rules;

import freshet.places.Places;
import freshet.places.Position;
import freshet.places.Site;
import freshet.pumps.Model;
import freshet.pumps.PumpKind;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
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

    List<RuleRow> rows(List<CareRule> rules) {
        Map<Long, String> models = pumps.models().stream().collect(Collectors.toMap(Model::id, Model::name));
        Map<Long, String> sites = places.sites().stream().collect(Collectors.toMap(Site::id, Site::name));
        Map<Long, Position> positions =
                places.positions().stream().collect(Collectors.toMap(Position::id, Function.identity()));
        Map<Long, String> tags = pumps
                .units(rules.stream()
                        .map(CareRule::scope)
                        .filter(Scope.OfUnit.class::isInstance)
                        .map(scope -> ((Scope.OfUnit) scope).unitId())
                        .toList())
                .stream()
                .collect(Collectors.toMap(Unit::id, Unit::tag));
        return rules.stream()
                .map(rule -> new RuleRow(rule, phrase(rule.scope(), models, sites, positions, tags)))
                .toList();
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
