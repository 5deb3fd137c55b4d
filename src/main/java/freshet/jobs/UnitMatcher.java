package freshet.jobs;

import freshet.fleet.Fleet;
import freshet.fleet.Readiness;
import freshet.fleet.Word;
import freshet.pumps.Model;
import freshet.pumps.Pumps;
import freshet.pumps.Ratings;
import freshet.pumps.Unit;
import freshet.readings.Readings;
import freshet.readings.TestPlot;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.springframework.stereotype.Component;

/** Holds every unit of our own against a job, as worn as it is. */
@Component
class UnitMatcher {

    private static final int AT_ONCE = 2_000;
    private static final int SHOWN = 40;
    private static final Readiness UNKNOWN = new Readiness(Word.UNKNOWN, List.of(), null);

    private final Pumps pumps;
    private final Readings readings;
    private final Fleet fleet;

    UnitMatcher(Pumps pumps, Readings readings, Fleet fleet) {
        this.pumps = pumps;
        this.readings = readings;
        this.fleet = fleet;
    }

    UnitMatches matches(Job job) {
        Map<Long, Gives> rated = new HashMap<>();
        List<UnitMatch> held = new ArrayList<>();
        List<Long> ids = pumps.activeUnitIds();
        for (int from = 0; from < ids.size(); from += AT_ONCE) {
            List<Unit> own = pumps.units(ids.subList(from, Math.min(from + AT_ONCE, ids.size()))).stream()
                    .filter(unit -> unit.customerId() == null)
                    .toList();
            Map<Long, TestPlot.OwnLine> lines = readings.lines(own);
            for (Unit unit : own) {
                Model model = unit.model();
                Double outletMm = model.ratings().outletMm();
                TestPlot.OwnLine worn = lines.get(unit.id());
                held.add(new UnitMatch(
                        unit,
                        worn == null ? null : Gives.of(Curves.tested(worn), job.line(), outletMm),
                        rated.computeIfAbsent(model.id(), id -> Gives.of(Curves.rated(model), job.line(), outletMm)),
                        job.wantedM3h(),
                        passes(job, model.ratings()),
                        UNKNOWN));
            }
        }
        held.sort(Comparator.comparingInt(UnitMatch::group).thenComparing(match -> -match.margin()));
        return new UnitMatches(
                asked(held.stream().limit(SHOWN).toList()),
                (int) held.stream().filter(UnitMatch::able).count(),
                (int) held.stream().filter(match -> match.worn() == null).count(),
                held.size());
    }

    private static boolean passes(Job job, Ratings ratings) {
        boolean tooCoarse = job.solidsMm() != null && ratings.solidsMm() != null && job.solidsMm() > ratings.solidsMm();
        boolean tooHot = job.liquidC() != null && ratings.maxLiquidC() != null && job.liquidC() > ratings.maxLiquidC();
        return !tooCoarse && !tooHot;
    }

    private List<UnitMatch> asked(List<UnitMatch> shown) {
        Map<Long, Readiness> readiness =
                fleet.readiness(shown.stream().map(match -> match.unit().id()).toList());
        return shown.stream()
                .map(match -> new UnitMatch(
                        match.unit(),
                        match.worn(),
                        match.rated(),
                        match.wantedM3h(),
                        match.passes(),
                        readiness.getOrDefault(match.unit().id(), UNKNOWN)))
                .toList();
    }
}
