package freshet.rules;

import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
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

    UnitRulesController(CareRules rules, ScopeNames names, Pumps pumps) {
        this.rules = rules;
        this.names = names;
        this.pumps = pumps;
    }

    /** The rule that holds, and those that would if it did not, the nearest first. */
    record Held(RuleRow holds, List<RuleRow> overruled) {}

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
                                        .toList()))
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
