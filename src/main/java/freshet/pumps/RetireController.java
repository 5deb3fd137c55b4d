package freshet.pumps;

import freshet.people.FormAnswer;
import freshet.people.Person;
import freshet.people.Typed;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.time.LocalDate;
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

/** The page on which a unit is retired, or brought back. */
@Controller
@PreAuthorize("hasRole('OWNER')")
class RetireController {

    private final Pumps pumps;
    private final Clock clock;

    RetireController(Pumps pumps, Clock clock) {
        this.pumps = pumps;
        this.clock = clock;
    }

    @ModelAttribute("way")
    String way() {
        return "pumps";
    }

    @GetMapping("/pumps/{id}/retire")
    String retire(@PathVariable long id, Model page) {
        Unit unit = pumps.unit(id);
        LocalDate today = LocalDate.ofInstant(clock.instant(), unit.stand().zone());
        page.addAttribute("form", new RetireForm(today.toString(), null, unit.version()));
        page.addAttribute("unit", unit);
        return "pumps/retire";
    }

    @PostMapping("/pumps/{id}/retire")
    String retire(
            @PathVariable long id,
            @ModelAttribute("form") RetireForm form,
            BindingResult errors,
            Model page,
            Person me,
            HttpServletResponse response,
            RedirectAttributes flash) {
        return FormAnswer.of(
                errors,
                page,
                response,
                () -> {
                    Typed typed = new Typed(me);
                    LocalDate on =
                            typed.required("retiredOn", typed.day("retiredOn", form.retiredOn()), "pumps.missing");
                    typed.required("retiredWhy", Typed.text(form.retiredWhy()), "pumps.missing");
                    typed.refuseIfWrong();
                    pumps.retire(
                            id,
                            Objects.requireNonNullElse(form.version(), -1),
                            Objects.requireNonNull(on),
                            Typed.textOrEmpty(form.retiredWhy()),
                            me);
                    return saved(id, flash);
                },
                () -> {
                    page.addAttribute("unit", pumps.unit(id));
                    return "pumps/retire";
                });
    }

    @PostMapping("/pumps/{id}/bring-back")
    String bringBack(@PathVariable long id, Person me, RedirectAttributes flash) {
        pumps.bringBack(id, pumps.unit(id).version(), me);
        return saved(id, flash);
    }

    private static String saved(long id, RedirectAttributes flash) {
        flash.addFlashAttribute("done", "pumps.saved");
        return "redirect:/pumps/" + id;
    }
}
