package freshet.checklists;

import freshet.people.FormAnswer;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.pumps.PumpKind;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;
import org.springframework.security.access.prepost.PreAuthorize;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The page on which an owner begins a checklist as a copy of another, for another kind of pump or another purpose. */
@Controller
@PreAuthorize("hasRole('OWNER')")
class CopyController {

    private final Checklists checklists;

    CopyController(Checklists checklists) {
        this.checklists = checklists;
    }

    @ModelAttribute("way")
    String way() {
        return "today";
    }

    @GetMapping("/checklists/new")
    String blank(@RequestParam(name = "from", required = false) @Nullable Long fromId, Model model) {
        model.addAttribute("form", CopyForm.of(fromId == null ? null : checklists.checklist(fromId)));
        return page(model);
    }

    private String page(Model model) {
        model.addAttribute("all", checklists.checklists());
        model.addAttribute("kinds", PumpKind.values());
        model.addAttribute("phases", Phase.values());
        model.addAttribute("effects", Effect.values());
        return "checklists/new";
    }

    @PostMapping("/checklists/new")
    String copy(
            @ModelAttribute("form") CopyForm form,
            BindingResult errors,
            Model model,
            Person me,
            RedirectAttributes flash,
            HttpServletResponse response) {
        return FormAnswer.of(
                errors,
                model,
                response,
                () -> {
                    long from = form.fromId().orElseThrow(() -> Refused.because("from", "checklists.new.from.missing"));
                    long id = checklists.copy(from, form.draft(checklists.checklist(from)), me);
                    flash.addFlashAttribute("done", "checklists.new.done");
                    return "redirect:/checklists/" + id;
                },
                () -> page(model));
    }
}
