package freshet.pumps;

import freshet.people.Difference;
import freshet.people.FormAnswer;
import freshet.people.Person;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
import java.util.Objects;
import org.springframework.security.access.prepost.PreAuthorize;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The page on which the kit of a unit is listed. */
@Controller
@PreAuthorize("hasRole('OWNER')")
class KitController {

    private final Pumps pumps;

    KitController(Pumps pumps) {
        this.pumps = pumps;
    }

    @ModelAttribute("way")
    String way() {
        return "pumps";
    }

    @GetMapping("/pumps/{id}/kit")
    String kit(@PathVariable long id, Model page, Person me) {
        Unit unit = pumps.unit(id);
        page.addAttribute("form", KitForm.of(unit, me.unitSystem()));
        return kitForm(page, unit);
    }

    @PostMapping("/pumps/{id}/kit")
    String changeKit(
            @PathVariable long id,
            @ModelAttribute("form") KitForm form,
            BindingResult errors,
            Model page,
            Person me,
            HttpServletResponse response,
            RedirectAttributes flash) {
        Unit stands = pumps.unit(id);
        if (errors.getTarget() != null && form.more() != null) {
            return kitForm(page, stands);
        }
        return FormAnswer.of(
                errors,
                page,
                response,
                () -> {
                    int version = Objects.requireNonNullElse(form.version(), -1);
                    pumps.changeKit(id, version, form.read(stands.kit(), me), me);
                    return saved(id, flash);
                },
                () -> {
                    if (page.containsAttribute("stale")) {
                        page.addAttribute(
                                "standsNow",
                                Difference.between("pumps.kit", form, KitForm.of(stands, me.unitSystem()), Map.of()));
                    }
                    return kitForm(page, stands);
                });
    }

    private static String kitForm(Model page, Unit unit) {
        page.addAttribute("unit", unit);
        page.addAttribute("kinds", KitKind.values());
        return "pumps/kit";
    }

    private static String saved(long id, RedirectAttributes flash) {
        flash.addFlashAttribute("done", "pumps.saved");
        return "redirect:/pumps/" + id;
    }
}
