package freshet.wear;

import freshet.findings.Finding;
import freshet.findings.Findings;
import freshet.places.Places;
import freshet.places.Site;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import freshet.readings.ComparedTest;
import freshet.readings.MeterLog;
import freshet.readings.Readings;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The door to how units wear and how the fleet fails. It reads the rooms below and keeps nothing. */
@Service
@Transactional(readOnly = true)
public class Wear {

    private static final int UNITS_AT_ONCE = 2_000;

    private final Pumps pumps;
    private final Places places;
    private final Readings readings;
    private final Findings findings;
    private final Clock clock;

    Wear(Pumps pumps, Places places, Readings readings, Findings findings, Clock clock) {
        this.pumps = pumps;
        this.places = places;
        this.readings = readings;
        this.findings = findings;
        this.clock = clock;
    }

    /** How a unit wears, with all that stands behind it. */
    public UnitWear unit(long unitId, WearQuestion asked) {
        Unit unit = pumps.unit(unitId);
        UnitWear alone = alone(unit, asked);
        if (alone.trend().n() >= Pooled.FEW_TESTS || alone.line().tests().isEmpty()) {
            return alone;
        }
        Pooled pooled = Pooled.of(unitId, lines(like(unit), asked), asked);
        return new UnitWear(
                unit,
                asked,
                alone.line(),
                alone.hoursNow(),
                alone.hoursReadAt(),
                alone.usage(),
                alone.reaching(),
                pooled);
    }

    /** The same in a sentence, at the usual threshold, for a unit that was tested or not. */
    public WearSaying saying(long unitId) {
        UnitWear wear = alone(pumps.unit(unitId), WearQuestion.USUAL);
        return new WearSaying(
                unitId,
                wear.word(),
                wear.trend().n(),
                wear.lossPer100h(),
                wear.asked().threshold(),
                wear.reaching());
    }

    private UnitWear alone(Unit unit, WearQuestion asked) {
        List<Long> only = List.of(unit.id());
        MeterLog log = readings.hourLogs(only).get(unit.id());
        UnitLine line = UnitLine.of(
                readings.comparedTests(only).getOrDefault(unit.id(), List.of()),
                log,
                findings.findingsOf(only, Repair.LEAST_SEVERITY).getOrDefault(unit.id(), List.of()),
                asked);
        Site site = places.site(unit.stand().siteId());
        LocalDate today = site.today(clock);
        Usage usage = Usage.of(log, site.zone(), new SeasonCalendar(site.windows()), today);
        MeterLog.Line last = log == null ? null : log.last();
        return new UnitWear(
                unit,
                asked,
                line,
                last == null || last.lifetime() == null
                        ? null
                        : Double.valueOf(last.lifetime().doubleValue()),
                last == null ? null : last.at(),
                usage,
                line.word() == WearWord.WEARING && !unit.retired()
                        ? Reaching.of(line.trend().hoursToThreshold(), usage, today)
                        : null,
                null);
    }

    /** The unit and those of its model; of very many, evenly chosen ones. */
    private Set<Long> like(Unit unit) {
        List<Long> all = pumps.everyUnitId(unit.model().id());
        int every = 1 + (all.size() - 1) / Pooled.MOST_UNITS;
        Set<Long> like = new HashSet<>();
        for (int i = 0; i < all.size(); i += every) {
            like.add(all.get(i));
        }
        like.add(unit.id());
        return like;
    }

    private Map<Long, UnitLine> lines(Collection<Long> unitIds, WearQuestion asked) {
        Map<Long, List<ComparedTest>> tests = readings.comparedTests(unitIds);
        Map<Long, MeterLog> logs = readings.hourLogs(tests.keySet());
        Map<Long, List<Finding>> found = findings.findingsOf(tests.keySet(), Repair.LEAST_SEVERITY);
        Map<Long, UnitLine> lines = new HashMap<>();
        tests.forEach((id, its) ->
                lines.put(id, UnitLine.of(its, logs.get(id), found.getOrDefault(id, List.of()), asked)));
        return lines;
    }

    /** The figures of the units of one model, or of the whole fleet and of each model; empty when there are too many units for one set. */
    public Optional<Figured> figures(@Nullable Long modelId) {
        List<Long> ids = pumps.everyUnitId(modelId);
        if (ids.size() > FleetFigures.MOST_UNITS) {
            return Optional.empty();
        }
        List<UnitLife> lives = lives(ids);
        return Optional.of(new Figured(FleetFigures.of(lives), modelId == null ? byModel(lives) : List.of()));
    }

    private List<ModelFigures> byModel(List<UnitLife> lives) {
        Map<Long, List<UnitLife>> byModel = lives.stream().collect(Collectors.groupingBy(UnitLife::modelId));
        return pumps.models().stream()
                .filter(model -> byModel.containsKey(model.id()))
                .map(model -> new ModelFigures(model.id(), model.name(), FleetFigures.of(byModel.get(model.id()))))
                .toList();
    }

    private List<UnitLife> lives(List<Long> unitIds) {
        Instant now = clock.instant();
        List<UnitLife> lives = new ArrayList<>();
        for (int from = 0; from < unitIds.size(); from += UNITS_AT_ONCE) {
            List<Long> some = unitIds.subList(from, Math.min(from + UNITS_AT_ONCE, unitIds.size()));
            Map<Long, MeterLog> logs = readings.hourLogs(some);
            Map<Long, List<Finding>> found = findings.findingsOf(some, Finding.STOPS_USE);
            for (Unit unit : pumps.units(some)) {
                lives.add(UnitLife.of(unit, logs.get(unit.id()), found.getOrDefault(unit.id(), List.of()), now));
            }
        }
        return lives;
    }
}
