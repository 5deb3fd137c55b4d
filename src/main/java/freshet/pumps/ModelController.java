package freshet.pumps;

import freshet.people.Difference;
import freshet.people.FormAnswer;
import freshet.people.Person;
import freshet.people.Typed;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
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
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The list of models, and the pages of one. */
@Controller
class ModelController {

    private final Pumps pumps;

    ModelController(Pumps pumps) {
        this.pumps = pumps;
    }

    @ModelAttribute("way")
    String way() {
        return "pumps";
    }

    @GetMapping("/pumps/models")
    String list(Model page) {
        page.addAttribute("models", pumps.models());
        return "pumps/models";
    }

    @GetMapping("/pumps/models/{id}")
    String model(@PathVariable long id, Model page) {
        page.addAttribute("model", pumps.model(id));
        return "pumps/model";
    }

    @GetMapping("/pumps/models/new")
    @PreAuthorize("hasRole('OWNER')")
    String blank(Model page) {
        page.addAttribute("form", ModelForm.blank());
        return form(page, null);
    }

    @PostMapping("/pumps/models/new")
    @PreAuthorize("hasRole('OWNER')")
    String add(
            @ModelAttribute("form") ModelForm form,
            BindingResult errors,
            Model page,
            Person me,
            HttpServletResponse response,
            RedirectAttributes flash) {
        if (errors.getTarget() != null && form.more() != null) {
            return form(page, null);
        }
        return FormAnswer.of(
                errors,
                page,
                response,
                () -> saved(pumps.addModel(looked(form, null, me), me), flash),
                () -> form(page, null));
    }

    @GetMapping("/pumps/models/{id}/edit")
    @PreAuthorize("hasRole('OWNER')")
    String edit(@PathVariable long id, Model page, Person me) {
        freshet.pumps.Model model = pumps.model(id);
        page.addAttribute("form", ModelForm.of(model, me.unitSystem()));
        return form(page, model);
    }

    @PostMapping("/pumps/models/{id}/edit")
    @PreAuthorize("hasRole('OWNER')")
    String change(
            @PathVariable long id,
            @ModelAttribute("form") ModelForm form,
            BindingResult errors,
            Model page,
            Person me,
            HttpServletResponse response,
            RedirectAttributes flash) {
        freshet.pumps.Model stands = pumps.model(id);
        if (errors.getTarget() != null && form.more() != null) {
            return form(page, stands);
        }
        return FormAnswer.of(
                errors,
                page,
                response,
                () -> {
                    int version = Objects.requireNonNullElse(form.version(), -1);
                    return saved(pumps.changeModel(id, version, looked(form, stands, me), me), flash);
                },
                () -> {
                    if (page.containsAttribute("stale")) {
                        page.addAttribute(
                                "standsNow",
                                Difference.between(
                                        "pumps.model", form, ModelForm.of(stands, me.unitSystem()), Map.of()));
                    }
                    return form(page, stands);
                });
    }

    /** The model that was typed, once everything unusual was looked at. */
    private static ModelDraft looked(ModelForm form, freshet.pumps.@Nullable Model stands, Person me) {
        Typed typed = new Typed(me);
        ModelDraft draft = form.draft(stands, typed);
        form.refuseUnlooked(draft, typed);
        return draft;
    }

    private static String saved(freshet.pumps.Model model, RedirectAttributes flash) {
        flash.addFlashAttribute("done", "pumps.saved");
        return "redirect:/pumps/models/" + model.id();
    }

    private static String form(Model page, freshet.pumps.@Nullable Model model) {
        page.addAttribute("model", model);
        page.addAttribute("kinds", PumpKind.values());
        page.addAttribute("drives", Drive.values());
        page.addAttribute("duties", Duty.values());
        page.addAttribute("curveForms", CurveForm.values());
        return "pumps/model-form";
    }
}
