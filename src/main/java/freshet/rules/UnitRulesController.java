package freshet.rules;

import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import freshet.readings.MeterKind;
import freshet.readings.MeterLog;
import freshet.readings.Readings;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;

/** The page of one unit's rules: which holds for each job, and which it overrules. */
@Controller
class UnitRulesController {

    private final CareRules rules;
    private final ScopeNames names;
    private final Pumps pumps;
    private final Readings readings;

    UnitRulesController(CareRules rules, ScopeNames names, Pumps pumps, Readings readings) {
        this.rules = rules;
        this.names = names;
        this.pumps = pumps;
        this.readings = readings;
    }

    /** The rule that holds, those that would if it did not, the nearest first, and the meters that it counts by and cannot foretell from. */
    record Held(RuleRow holds, List<RuleRow> overruled, List<Unread> unread) {}

    /** A meter that was read less than twice, a day apart: what it showed says nothing about how much the unit runs. */
    record Unread(MeterKind kind, @Nullable Instant once) {}

    @ModelAttribute("way")
    String way() {
        return "pumps";
    }

    @GetMapping("/pumps/{id}/rules")
    String rules(@PathVariable long id, Model model) {
        Unit unit = pumps.unit(id);
        List<CareRule> all = rules.rules();
        Map<Long, RuleRow> rows = names.rows(all).stream()
                .collect(Collectors.toMap(row -> row.rule().id(), Function.identity()));
        List<Applied> applied = of(unit, all);
        model.addAttribute("unit", unit);
        model.addAttribute(
                "held",
                applied.stream()
                        .map(each -> new Held(
                                rows.get(each.rule().id()),
                                each.overruled().stream()
                                        .map(other -> rows.get(other.id()))
                                        .toList(),
                                unread(unit.id(), each.rule())))
                        .toList());
        model.addAttribute(
                "resting",
                of(unit, all.stream().map(CareRule::awake).toList()).stream()
                        .flatMap(each -> Stream.concat(Stream.of(each.rule()), each.overruled().stream()))
                        .map(rule -> rows.get(rule.id()))
                        .filter(row -> !row.rule().active())
                        .toList());
        return "rules/unit";
    }

    private List<Unread> unread(long unitId, CareRule rule) {
        Set<MeterKind> counted = new TreeSet<>();
        for (Trigger trigger : rule.triggers()) {
            if (trigger instanceof Trigger.RunHours) {
                counted.add(MeterKind.RUN_HOURS);
            } else if (trigger instanceof Trigger.Starts) {
                counted.add(MeterKind.STARTS);
            }
        }
        return counted.stream()
                .map(kind -> unread(readings.log(unitId, kind)))
                .flatMap(Optional::stream)
                .toList();
    }

    private static Optional<Unread> unread(MeterLog log) {
        List<Instant> read = log.lines().stream()
                .filter(line -> line.lifetime() != null)
                .map(MeterLog.Line::at)
                .toList();
        if (read.isEmpty()) {
            return Optional.of(new Unread(log.kind(), null));
        }
        Instant first = read.get(0);
        Instant last = read.get(read.size() - 1);
        boolean tells = Duration.between(first, last).toDays() >= 1;
        return tells ? Optional.empty() : Optional.of(new Unread(log.kind(), last));
    }

    private static List<Applied> of(Unit unit, List<CareRule> all) {
        return new Nearest(all)
                .of(
                        unit.id(),
                        unit.stand().positionId(),
                        unit.stand().siteId(),
                        unit.model().id(),
                        unit.model().kind());
    }
}
