package freshet.places;

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

/** The pages on which a position is added to a site or changed. */
@Controller
@PreAuthorize("hasRole('OWNER')")
class PositionController {

    private final Places places;

    PositionController(Places places) {
        this.places = places;
    }

    @ModelAttribute("way")
    String way() {
        return "places";
    }

    @ModelAttribute("kinds")
    PositionKind[] kinds() {
        return PositionKind.values();
    }

    @GetMapping("/places/sites/{siteId}/positions/new")
    String blank(@PathVariable long siteId, Model model) {
        model.addAttribute("site", places.site(siteId));
        model.addAttribute("form", new PositionForm(null, PositionKind.PIT, null, null));
        return "places/position-form";
    }

    @PostMapping("/places/sites/{siteId}/positions/new")
    String add(
            @PathVariable long siteId,
            @ModelAttribute("form") PositionForm form,
            BindingResult errors,
            Model model,
            Person me,
            HttpServletResponse response,
            RedirectAttributes flash) {
        model.addAttribute("site", places.site(siteId));
        return FormAnswer.of(
                errors,
                model,
                response,
                () -> saved(places.addPosition(form.draft(siteId), me), flash),
                () -> "places/position-form");
    }

    @GetMapping("/places/positions/{id}/edit")
    String edit(@PathVariable long id, Model model) {
        Position position = places.position(id);
        model.addAttribute("form", PositionForm.of(position));
        return form(model, position);
    }

    @PostMapping("/places/positions/{id}/edit")
    String change(
            @PathVariable long id,
            @ModelAttribute("form") PositionForm form,
            BindingResult errors,
            Model model,
            Person me,
            HttpServletResponse response,
            RedirectAttributes flash) {
        long siteId = places.position(id).siteId();
        return FormAnswer.of(
                errors,
                model,
                response,
                () -> {
                    int version = Objects.requireNonNullElse(form.version(), -1);
                    return saved(places.changePosition(id, version, form.draft(siteId), me), flash);
                },
                () -> {
                    Position now = places.position(id);
                    if (model.containsAttribute("stale")) {
                        model.addAttribute(
                                "standsNow",
                                Difference.between("places.position", form, PositionForm.of(now), Map.of()));
                    }
                    return form(model, now);
                });
    }

    private String form(Model model, Position position) {
        model.addAttribute("position", position);
        model.addAttribute("site", places.site(position.siteId()));
        return "places/position-form";
    }

    private static String saved(Position position, RedirectAttributes flash) {
        flash.addFlashAttribute("done", "places.saved");
        return "redirect:/places/sites/" + position.siteId();
    }
}
