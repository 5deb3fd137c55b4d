package freshet.offline;

import freshet.people.FormAnswer;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Typed;
import freshet.pumps.Pumps;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Arrays;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The pages on which what did not fit is looked at and settled. */
@Controller
class ConflictController {

    private final Offline offline;
    private final Pumps pumps;

    ConflictController(Offline offline, Pumps pumps) {
        this.offline = offline;
        this.pumps = pumps;
    }

    @ModelAttribute("way")
    String way() {
        return "today";
    }

    @GetMapping("/offline/conflicts")
    String list(Model model, Person me) {
        model.addAttribute("conflicts", offline.conflicts(me));
        return "offline/conflicts";
    }

    @GetMapping("/offline/conflicts/{id}")
    String conflict(@PathVariable long id, Model model, Person me) {
        model.addAttribute("form", new SettleForm(null, null));
        return page(id, model, me);
    }

    private String page(long id, Model model, Person me) {
        Conflict conflict = offline.conflict(id, me);
        model.addAttribute("conflict", conflict);
        model.addAttribute("zone", pumps.unit(conflict.unitId()).stand().zone());
        model.addAttribute("both", offline.beside(conflict, me));
        return "offline/conflict";
    }

    @PostMapping("/offline/conflicts/{id}")
    String settle(
            @PathVariable long id,
            @ModelAttribute("form") SettleForm form,
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
                    offline.settle(id, chosen(form), Typed.textOrEmpty(form.why()), me);
                    flash.addFlashAttribute("done", "offline.settled.done");
                    return "redirect:/offline/conflicts/" + id + "?settled=" + id;
                },
                () -> page(id, model, me));
    }

    private static Conflict.How chosen(SettleForm form) {
        return Arrays.stream(Conflict.How.values())
                .filter(how -> how.name().equals(form.how()))
                .findFirst()
                .orElseThrow(() -> Refused.because("how", "offline.how.missing"));
    }
}
