package freshet.rules;

import freshet.people.Person;
import freshet.pumps.PumpKind;
import freshet.pumps.Pumps;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.security.access.prepost.PreAuthorize;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The page of all rules by job, on which they are put to rest and woken. */
@Controller
class RuleListController {

    private final CareRules rules;
    private final ScopeNames names;
    private final Pumps pumps;

    RuleListController(CareRules rules, ScopeNames names, Pumps pumps) {
        this.rules = rules;
        this.names = names;
        this.pumps = pumps;
    }

    @ModelAttribute("way")
    String way() {
        return "season";
    }

    /** The jobs in the order of what makes them due, the seasons first; those of one kind only when one is named. */
    @GetMapping("/rules")
    String list(@RequestParam @Nullable PumpKind kind, Model model) {
        List<CareRule> shown = rules.rules().stream()
                .filter(rule -> kind == null || isFor(rule.scope(), kind))
                .filter(rule -> !rule.triggers().isEmpty())
                .sorted(Comparator.comparing((CareRule rule) ->
                                TriggerKind.of(rule.triggers().get(0)))
                        .thenComparing(rule -> rule.scope().nearness())
                        .thenComparing(CareRule::id))
                .toList();
        Map<String, List<RuleRow>> byJob = names.rows(shown).stream()
                .collect(Collectors.groupingBy(row -> row.rule().job(), LinkedHashMap::new, Collectors.toList()));
        model.addAttribute("jobs", byJob);
        model.addAttribute(
                "resting", shown.stream().filter(rule -> !rule.active()).count());
        model.addAttribute("kind", kind);
        model.addAttribute("kinds", PumpKind.values());
        return "rules/list";
    }

    private boolean isFor(Scope scope, PumpKind kind) {
        if (scope instanceof Scope.OfKind of) {
            return of.kind() == kind;
        }
        if (scope instanceof Scope.OfModel of) {
            return pumps.model(of.modelId()).kind() == kind;
        }
        if (scope instanceof Scope.OfUnit of) {
            return pumps.unit(of.unitId()).model().kind() == kind;
        }
        if (scope instanceof Scope.AtSite at) {
            return at.kind() == null || at.kind() == kind;
        }
        return !(scope instanceof Scope.InPosition in) || in.kind() == null || in.kind() == kind;
    }

    @PostMapping("/rules/{id}/rest")
    @PreAuthorize("hasRole('OWNER')")
    String rest(@PathVariable long id, @RequestParam int version, Person me, RedirectAttributes flash) {
        rules.rest(id, version, me);
        flash.addFlashAttribute("done", "rules.put.rest");
        return "redirect:/rules/" + id;
    }

    @PostMapping("/rules/{id}/wake")
    @PreAuthorize("hasRole('OWNER')")
    String wake(@PathVariable long id, @RequestParam int version, Person me, RedirectAttributes flash) {
        rules.wake(id, version, me);
        flash.addFlashAttribute("done", "rules.put.awake");
        return "redirect:/rules/" + id;
    }
}
