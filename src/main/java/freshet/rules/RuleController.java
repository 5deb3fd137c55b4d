package freshet.rules;

import freshet.checklists.Checklists;
import freshet.happenings.HappeningKind;
import freshet.people.FormAnswer;
import freshet.people.Person;
import freshet.people.Typed;
import freshet.places.Places;
import freshet.places.Site;
import freshet.places.WindowKind;
import freshet.pumps.PumpKind;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Month;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.springframework.security.access.prepost.PreAuthorize;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The form of a rule. */
@Controller
class RuleController {

    private static final int MOST_OFFERED = 300;

    private final CareRules rules;
    private final ScopeNames names;
    private final ScopeFinder finder;
    private final Checklists checklists;
    private final Pumps pumps;
    private final Places places;

    RuleController(
            CareRules rules, ScopeNames names, ScopeFinder finder, Checklists checklists, Pumps pumps, Places places) {
        this.rules = rules;
        this.names = names;
        this.finder = finder;
        this.checklists = checklists;
        this.pumps = pumps;
        this.places = places;
    }

    @ModelAttribute("way")
    String way() {
        return "season";
    }

    /** Blank, or as the rule that is named, for a unit or for the place where it stands. */
    @GetMapping("/rules/new")
    @PreAuthorize("hasRole('OWNER')")
    String blank(
            @RequestParam @Nullable Long like,
            @RequestParam @Nullable Long unit,
            @RequestParam @Nullable String place,
            Model model) {
        RuleForm form = RuleForm.blank();
        if (like != null) {
            CareRule rule = rules.rule(like);
            Unit meant = unit == null ? null : pumps.unit(unit);
            ScopeForm scope = meant == null
                    ? finder.named(rule.scope())
                    : place == null ? ScopeForm.ofUnit(meant.tag()) : finder.placeOf(meant);
            form = RuleForm.of(rule, scope, null);
            model.addAttribute("like", names.row(rule));
        }
        model.addAttribute("form", form);
        return form(model);
    }

    @PostMapping("/rules/new")
    @PreAuthorize("hasRole('OWNER')")
    String add(
            @ModelAttribute("form") RuleForm form,
            BindingResult errors,
            Model model,
            Person me,
            HttpServletResponse response,
            RedirectAttributes flash) {
        if (errors.getTarget() != null && form.asksForRows()) {
            model.addAttribute("form", form.withRows());
            return form(model);
        }
        return FormAnswer.of(
                errors,
                model,
                response,
                () -> {
                    long id = rules.add(draft(form, me), me);
                    flash.addFlashAttribute("done", "rules.saved");
                    return "redirect:/rules/" + id;
                },
                () -> form(model));
    }

    @GetMapping("/rules/{id}")
    String rule(@PathVariable long id, Model model, Person me) {
        CareRule rule = rules.rule(id);
        model.addAttribute("row", names.row(rule));
        model.addAttribute("checklist", checklists.checklist(rule.checklistId()));
        if (!me.owner()) {
            return "rules/rule";
        }
        model.addAttribute("form", RuleForm.of(rule, finder.named(rule.scope()), rule.version()));
        return form(model);
    }

    @PostMapping("/rules/{id}")
    @PreAuthorize("hasRole('OWNER')")
    String change(
            @PathVariable long id,
            @ModelAttribute("form") RuleForm form,
            BindingResult errors,
            Model model,
            Person me,
            HttpServletResponse response,
            RedirectAttributes flash) {
        model.addAttribute("row", names.row(rules.rule(id)));
        if (errors.getTarget() != null && form.asksForRows()) {
            model.addAttribute("form", form.withRows());
            return form(model);
        }
        return FormAnswer.of(
                errors,
                model,
                response,
                () -> {
                    rules.change(id, Objects.requireNonNullElse(form.version(), -1), draft(form, me), me);
                    flash.addFlashAttribute("done", "rules.saved");
                    return "redirect:/rules/" + id;
                },
                () -> formAgain(id, form, model));
    }

    private String formAgain(long id, RuleForm typed, Model model) {
        if (model.containsAttribute("stale")) {
            CareRule rule = rules.rule(id);
            model.addAttribute("row", names.row(rule));
            RuleForm now = RuleForm.of(rule, finder.named(rule.scope()), rule.version());
            String checklist = checklists.checklist(rule.checklistId()).name();
            model.addAttribute("standsNow", StandsNow.beside(typed, now, checklist));
        }
        return form(model);
    }

    /** A job of one's own that is the same words as a known one is the known one. */
    private RuleDraft draft(RuleForm form, Person me) {
        Typed typed = new Typed(me);
        RuleDraft draft = form.draft(finder.found(form.meant(), typed), typed);
        String known = draft.job().toLowerCase(Locale.ROOT).replace(' ', '-');
        return rules.rules().stream()
                .map(CareRule::job)
                .filter(job -> job.toLowerCase(Locale.ROOT).replace(' ', '-').equals(known))
                .findFirst()
                .map(draft::forJob)
                .orElse(draft);
    }

    private String form(Model model) {
        model.addAttribute(
                "jobs",
                rules.rules().stream().map(CareRule::job).distinct().sorted().toList());
        model.addAttribute("kinds", PumpKind.values());
        model.addAttribute("scopes", ScopeKind.values());
        model.addAttribute("triggerKinds", TriggerKind.values());
        model.addAttribute("units", Span.values());
        model.addAttribute("windows", List.of(WindowKind.OPENING, WindowKind.CLOSING));
        model.addAttribute("events", HappeningKind.values());
        model.addAttribute("measures", Measure.values());
        model.addAttribute("months", Month.values());
        model.addAttribute("appliesWhen", Applies.values());
        model.addAttribute("lists", checklists.checklists());
        model.addAttribute(
                "models",
                pumps.models().stream()
                        .map(each -> each.name())
                        .limit(MOST_OFFERED)
                        .toList());
        model.addAttribute(
                "sites",
                places.sites().stream().map(Site::name).limit(MOST_OFFERED).toList());
        return "rules/form";
    }
}
