package freshet.findings;

import freshet.measures.Show;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Typed;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The page on which a unit is tagged out; none takes a tag off. */
@Controller
class HoldController {

    private final Findings findings;
    private final Pumps pumps;

    HoldController(Findings findings, Pumps pumps) {
        this.findings = findings;
        this.pumps = pumps;
    }

    @ModelAttribute("way")
    String way() {
        return "pumps";
    }

    @GetMapping("/pumps/{id}/tag-out")
    String blank(@PathVariable long id, Model model) {
        return page(pumps.unit(id), new TagOutForm(null), model);
    }

    private String page(Unit unit, TagOutForm form, Model model) {
        List<Hold> holds = findings.holdsOf(unit.id());
        model.addAttribute("form", form);
        model.addAttribute("pump", unit);
        model.addAttribute("open", holds.stream().filter(Hold::open).toList());
        model.addAttribute(
                "released", holds.stream().filter(hold -> !hold.open()).toList());
        model.addAttribute("tagged", holds.stream().anyMatch(HoldController::tagged));
        return "findings/tag-out";
    }

    private static boolean tagged(Hold hold) {
        return hold.open() && hold.kind() == HoldKind.TAGGED_OUT;
    }

    @PostMapping("/pumps/{id}/tag-out")
    String tagOut(
            @PathVariable long id,
            @ModelAttribute("form") TagOutForm form,
            BindingResult errors,
            @ModelAttribute("show") Show show,
            Model model,
            Person me,
            RedirectAttributes flash,
            HttpServletResponse response) {
        Unit unit = pumps.unit(id);
        try {
            refuseSecond(id, show);
            findings.hold(id, HoldKind.TAGGED_OUT, Why.typed(Typed.textOrEmpty(form.why())), me);
        } catch (Refused refused) {
            refused.into(errors);
            model.addAttribute("tried", true);
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return page(unit, form, model);
        }
        flash.addFlashAttribute("done", "findings.tagOut.done");
        return "redirect:/pumps/" + id;
    }

    private void refuseSecond(long unitId, Show show) {
        for (Hold hold : findings.holdsOf(unitId)) {
            if (tagged(hold)) {
                throw Refused.because(
                        "",
                        "findings.tagOut.already",
                        show.dayTime(hold.since(), hold.zone()),
                        hold.byName(),
                        hold.why().said());
            }
        }
    }
}
