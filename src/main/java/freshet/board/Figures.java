package freshet.board;

import freshet.board.PlanFacts.Standing;
import freshet.readings.Capacity;
import freshet.readings.ComparedTest;
import freshet.readings.Readings;
import freshet.rules.CareRule;
import freshet.rules.Measure;
import freshet.rules.Trigger;
import java.util.Collection;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.springframework.stereotype.Component;

/** Works out the figures that rules watch, for many units at once, and only those that some rule asks for. */
@Component
class Figures {

    private final Readings readings;

    Figures(Readings readings) {
        this.readings = readings;
    }

    Map<Long, Map<Measure, List<Figure>>> of(
            List<Standing> units,
            Set<Long> tested,
            Collection<CareRule> rules,
            Map<Long, SiteDays> siteOf,
            Map<Long, Series> hours,
            Map<Long, Series> starts,
            Map<Long, Set<Long>> beside) {
        Map<Measure, Double> asked = new EnumMap<>(Measure.class);
        rules.stream()
                .filter(CareRule::active)
                .flatMap(rule -> rule.triggers().stream())
                .forEach(trigger -> {
                    if (trigger instanceof Trigger.Condition condition) {
                        asked.merge(condition.measure(), condition.threshold(), Math::max);
                    }
                });
        Map<Long, Map<Measure, List<Figure>>> all = new HashMap<>();
        List<Long> ids = units.stream()
                .filter(unit -> !unit.retired() && tested.contains(unit.id()))
                .map(Standing::id)
                .toList();
        if (asked.containsKey(Measure.CAPACITY)) {
            capacities(ids, asked.get(Measure.CAPACITY), siteOf, all);
        }
        if (asked.containsKey(Measure.DAYS_TO_CAPACITY_LOW)) {
            Map<Long, List<ComparedTest>> tests = readings.comparedTests(ids);
            tests.forEach((id, its) -> put(
                    all,
                    id,
                    Measure.DAYS_TO_CAPACITY_LOW,
                    new Trend(its, hours.getOrDefault(id, Series.NEVER_READ), siteOf.get(id)).daysToLow()));
        }
        for (Standing unit : units) {
            Use use = new Use(
                    hours.getOrDefault(unit.id(), Series.NEVER_READ),
                    starts.getOrDefault(unit.id(), Series.NEVER_READ));
            if (asked.containsKey(Measure.STARTS_PER_HOUR)) {
                put(all, unit.id(), Measure.STARTS_PER_HOUR, use.startsPerHour());
            }
            if (asked.containsKey(Measure.MINUTES_PER_START)) {
                put(all, unit.id(), Measure.MINUTES_PER_START, use.minutesPerStart());
            }
            if (asked.containsKey(Measure.HOURS_APART) && unit.positionId() != null) {
                List<Series> others = beside.getOrDefault(unit.positionId(), Set.of()).stream()
                        .filter(id -> id != unit.id())
                        .map(id -> hours.getOrDefault(id, Series.NEVER_READ))
                        .filter(series -> !series.empty())
                        .toList();
                put(all, unit.id(), Measure.HOURS_APART, use.hoursApart(others));
            }
        }
        return all;
    }

    private static void put(
            Map<Long, Map<Measure, List<Figure>>> all, long unitId, Measure measure, List<Figure> figures) {
        if (!figures.isEmpty()) {
            all.computeIfAbsent(unitId, id -> new EnumMap<>(Measure.class)).put(measure, figures);
        }
    }

    /** An episode lasts only while the latest test is below: the tests of all other units need not be worked out. */
    private void capacities(
            List<Long> ids, double threshold, Map<Long, SiteDays> siteOf, Map<Long, Map<Measure, List<Figure>>> all) {
        Map<Long, Capacity> latest = readings.capacities(ids);
        List<Long> perhaps = ids.stream()
                .filter(id -> !latest.containsKey(id) || latest.get(id).fraction() < threshold)
                .toList();
        readings.capacityHistories(perhaps)
                .forEach((id, tests) -> put(
                        all,
                        id,
                        Measure.CAPACITY,
                        tests.stream()
                                .map(test -> new Figure(
                                        String.valueOf(test.testId()),
                                        test.testedAt(),
                                        Objects.requireNonNull(siteOf.get(id)).day(test.testedAt()),
                                        test.fraction()))
                                .toList()));
    }
}
