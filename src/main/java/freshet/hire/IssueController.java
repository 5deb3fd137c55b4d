package freshet.hire;

import freshet.people.FormAnswer;
import freshet.people.Person;
import freshet.pumps.Pumps;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The page on which a unit is sent out. */
@Controller
class IssueController {

    private final Hires hires;
    private final Pumps pumps;
    private final IssueDesk desk;
    private final Clock clock;

    IssueController(Hires hires, Pumps pumps, IssueDesk desk, Clock clock) {
        this.hires = hires;
        this.pumps = pumps;
        this.desk = desk;
        this.clock = clock;
    }

    @ModelAttribute("way")
    String way() {
        return "pumps";
    }

    @GetMapping("/pumps/{id}/issue")
    String blank(@PathVariable long id, Model model) {
        model.addAttribute("form", IssueForm.BLANK);
        return page(id, false, model);
    }

    /** The fields stand there when the unit may go out, and when something was typed that must not be lost. */
    private String page(long id, boolean typed, Model model) {
        IssueCheck check = hires.mayGoOut(id);
        Hire open = hires.openOf(id).orElse(null);
        desk.lay(model, check);
        model.addAttribute("open", open);
        model.addAttribute("fields", typed || open == null && !check.refused());
        return "hire/issue";
    }

    @PostMapping("/pumps/{id}/issue")
    String issue(
            @PathVariable long id,
            @ModelAttribute("form") IssueForm form,
            BindingResult errors,
            Model model,
            Person me,
            HttpServletResponse response,
            RedirectAttributes flash) {
        return FormAnswer.of(
                errors,
                model,
                response,
                () -> {
                    long hire = hires.issue(form.draft(pumps.unit(id), "", me, clock.instant()), me);
                    flash.addFlashAttribute("done", "hire.issued");
                    return "redirect:/hires/" + hire;
                },
                () -> page(id, true, model));
    }
}
