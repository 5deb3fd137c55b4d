package freshet.hire;

import freshet.people.FormAnswer;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Typed;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Objects;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The paper of a hire, and the pages on which its unit comes back, stays longer, or gives way to another. */
@Controller
class HireController {

    private final Hires hires;
    private final Pumps pumps;
    private final IssueDesk desk;
    private final Clock clock;

    HireController(Hires hires, Pumps pumps, IssueDesk desk, Clock clock) {
        this.hires = hires;
        this.pumps = pumps;
        this.desk = desk;
        this.clock = clock;
    }

    @ModelAttribute("way")
    String way() {
        return "pumps";
    }

    /** Another last day for a hire. */
    record ExtendForm(@Nullable String dueBackOn, @Nullable String version) {

        int opened() {
            return version != null && version.matches("\\d{1,9}") ? Integer.parseInt(version) : -1;
        }
    }

    @GetMapping("/hires/{id}")
    String paper(@PathVariable long id, Model model) {
        Hire hire = hires.hire(id);
        model.addAttribute("form", new ExtendForm(hire.dueBackOn().toString(), String.valueOf(hire.version())));
        return paper(hire, model);
    }

    private String paper(Hire hire, Model model) {
        model.addAttribute("hire", hire);
        model.addAttribute("pump", pumps.unit(hire.unitId()));
        model.addAttribute("daysOver", hire.daysOver(hire.today(clock)));
        model.addAttribute("extensions", hires.extensions(hire.id()));
        model.addAttribute("emergencyLine", hires.emergencyLine().orElse(null));
        return "hire/paper";
    }

    @PostMapping("/hires/{id}/extend")
    String extend(
            @PathVariable long id,
            @ModelAttribute("form") ExtendForm form,
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
                    Typed typed = new Typed(me);
                    LocalDate due =
                            typed.required("dueBackOn", typed.day("dueBackOn", form.dueBackOn()), "hire.due.missing");
                    typed.refuseIfWrong();
                    hires.extend(id, form.opened(), Objects.requireNonNull(due), me);
                    flash.addFlashAttribute("done", "hire.extended");
                    return "redirect:/hires/" + id;
                },
                () -> paper(hires.hire(id), model));
    }

    @GetMapping("/hires/{id}/return")
    String back(@PathVariable long id, Model model) {
        Hire hire = hires.hire(id);
        model.addAttribute("form", ReturnForm.blank(hire));
        return backPage(hire, model);
    }

    private String backPage(Hire hire, Model model) {
        desk.lay(model, hire, pumps.unit(hire.unitId()));
        return "hire/return";
    }

    @PostMapping("/hires/{id}/return")
    String takeBack(
            @PathVariable long id,
            @ModelAttribute("form") ReturnForm form,
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
                    hires.takeBack(id, form.draft(hires.hire(id), "", me, clock.instant()), me);
                    flash.addFlashAttribute("done", "hire.returned");
                    return "redirect:/hires/" + id;
                },
                () -> backPage(hires.hire(id), model));
    }

    @GetMapping("/hires/{id}/swap")
    String swap(@PathVariable long id, @RequestParam @Nullable String with, Model model) {
        Hire hire = hires.hire(id);
        IssueForm out = IssueForm.inPlaceOf(hire, hire.today(clock));
        model.addAttribute("form", new SwapForm(ReturnForm.blank(hire), out, null));
        return swapPage(hire, other(with, hire), with, false, model);
    }

    /** The unit of this tag, if it is another than the one that is out. */
    private @Nullable Unit other(@Nullable String tag, Hire hire) {
        String text = Typed.text(tag);
        return text == null
                ? null
                : pumps.unitTagged(text)
                        .filter(unit -> unit.id() != hire.unitId())
                        .orElse(null);
    }

    private String swapPage(Hire hire, @Nullable Unit with, @Nullable String tag, boolean typed, Model model) {
        desk.lay(model, hire, pumps.unit(hire.unitId()));
        model.addAttribute("with", Typed.textOrEmpty(tag));
        model.addAttribute("fields", false);
        model.addAttribute("check", null);
        if (with != null) {
            IssueCheck check = hires.mayGoOut(with.id());
            Hire open = hires.openOf(with.id()).orElse(null);
            desk.lay(model, check);
            model.addAttribute("open", open);
            model.addAttribute("fields", typed || open == null && !check.refused());
        }
        model.addAttribute("reasons", SwapReason.values());
        return "hire/swap";
    }

    @PostMapping("/hires/{id}/swap")
    String swap(
            @PathVariable long id,
            @RequestParam @Nullable String with,
            @ModelAttribute("form") SwapForm sent,
            BindingResult errors,
            Model model,
            Person me,
            HttpServletResponse response,
            RedirectAttributes flash) {
        Hire hire = hires.hire(id);
        Unit other = other(with, hire);
        if (errors.getTarget() == null || other == null) {
            response.setStatus(400);
            return "error/4xx";
        }
        return FormAnswer.of(
                errors,
                model,
                response,
                () -> {
                    SwapForm form = sent.whole(hire);
                    SwapReason reason = Stream.of(SwapReason.values())
                            .filter(each -> each.name().equals(form.reason()))
                            .findFirst()
                            .orElseThrow(() -> Refused.because("reason", "hire.swap.choose"));
                    long next = hires.swap(
                            id,
                            form.returned().draft(hire, "back.", me, clock.instant()),
                            reason,
                            form.issued().draft(other, "out.", me, clock.instant()),
                            me);
                    flash.addFlashAttribute("done", "hire.swapped");
                    return "redirect:/hires/" + next;
                },
                () -> swapPage(hires.hire(id), other, with, true, model));
    }
}
