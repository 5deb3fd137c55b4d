package freshet.rules;

import freshet.pumps.PumpKind;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Of rules with one job, the nearest to a unit holds for it; of equally near ones the newest. */
public final class Nearest {

    private static final Comparator<CareRule> NEAREST_FIRST = Comparator.comparingInt(
                    (CareRule rule) -> rule.scope().nearness())
            .thenComparingLong(CareRule::id)
            .reversed();

    private final Map<Scope, List<CareRule>> byScope = new HashMap<>();

    /** Rests that are among the rules hold for nobody. */
    public Nearest(List<CareRule> rules) {
        rules.stream()
                .filter(CareRule::active)
                .forEach(rule -> byScope.computeIfAbsent(rule.scope(), scope -> new ArrayList<>())
                        .add(rule));
    }

    /** What holds for a unit that stands there, one for each job, by the jobs' names. */
    public List<Applied> of(long unitId, @Nullable Long positionId, long siteId, long modelId, PumpKind kind) {
        Map<String, List<CareRule>> byJob = new TreeMap<>();
        gather(new Scope.Every(), byJob);
        gather(new Scope.OfKind(kind), byJob);
        gather(new Scope.OfModel(modelId), byJob);
        gather(new Scope.AtSite(siteId), byJob);
        gather(new Scope.AtSite(siteId, kind), byJob);
        if (positionId != null) {
            gather(new Scope.InPosition(positionId), byJob);
            gather(new Scope.InPosition(positionId, kind), byJob);
        }
        gather(new Scope.OfUnit(unitId), byJob);
        return byJob.values().stream().map(Nearest::applied).toList();
    }

    private void gather(Scope scope, Map<String, List<CareRule>> byJob) {
        for (CareRule rule : byScope.getOrDefault(scope, List.of())) {
            byJob.computeIfAbsent(rule.job(), job -> new ArrayList<>(2)).add(rule);
        }
    }

    private static Applied applied(List<CareRule> fitting) {
        fitting.sort(NEAREST_FIRST);
        return new Applied(fitting.get(0), List.copyOf(fitting.subList(1, fitting.size())));
    }
}
