package freshet.readings;

import freshet.people.People;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Typed;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.WebDataBinder;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.InitBinder;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The pages on which a flow test is typed, worked out, kept and looked back at. */
@Controller
class FlowTestController {

    private final Readings readings;
    private final Pumps pumps;
    private final People people;
    private final Clock clock;

    FlowTestController(Readings readings, Pumps pumps, People people, Clock clock) {
        this.readings = readings;
        this.pumps = pumps;
        this.people = people;
        this.clock = clock;
    }

    @ModelAttribute("way")
    String way() {
        return "pumps";
    }

    /** A form is whole when it is made; nothing is set on it afterwards, whatever a browser sends. */
    @InitBinder
    void bindByConstructor(WebDataBinder binder) {
        binder.setDeclarativeBinding(true);
    }

    @GetMapping("/pumps/{id}/flow-test")
    String blank(@PathVariable long id, Model model, Person me) {
        Unit unit = pumps.unit(id);
        FlowTestDraft latest = readings.flowTests(id).stream()
                .filter(FlowTestResult::stands)
                .map(FlowTestResult::facts)
                .findFirst()
                .orElse(null);
        return page(unit, FlowTestForm.blank(unit, latest, me, clock.instant()), model);
    }

    private String page(Unit unit, FlowTestForm form, Model model) {
        model.addAttribute("form", form);
        model.addAttribute("pump", unit);
        model.addAttribute("ways", FlowByForm.WAYS);
        model.addAttribute("hoses", PieceForm.HOSES);
        model.addAttribute("fittings", PieceForm.FITTINGS);
        return "readings/flow-test";
    }

    /** The press says what is wanted: to work it out, to keep it, to add a piece, or to take one out. */
    @PostMapping("/pumps/{id}/flow-test")
    String press(
            @PathVariable long id,
            @RequestParam(name = "press", defaultValue = "") String pressedNow,
            @RequestParam(required = false) @Nullable String pressed,
            @ModelAttribute("form") FlowTestForm form,
            BindingResult errors,
            Model model,
            Person me,
            RedirectAttributes flash,
            HttpServletResponse response) {
        Unit unit = pumps.unit(id);
        String press = Typed.press(pressedNow, pressed);
        if (PieceForm.changes(press)) {
            return page(unit, form.withPieces(PieceForm.pressed(form.pieces(), press)), model);
        }
        try {
            FlowTestDraft draft = form.draft(unit, me, clock.instant());
            FlowTestResult worked = readings.workOut(draft, me);
            form.askAboutSlip(worked, new Typed(me));
            if (press.equals("keep")) {
                long test = readings.recordFlowTest(draft, me);
                flash.addFlashAttribute("done", "readings.test.done");
                return "redirect:/flow-tests/" + test;
            }
            model.addAttribute("page", FlowTestPage.of(worked));
        } catch (Refused refused) {
            refused.into(errors);
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        }
        return page(unit, form, model);
    }

    @GetMapping("/flow-tests/{id}")
    String kept(@PathVariable long id, Model model) {
        model.addAttribute("form", new WithdrawForm(null));
        return keptPage(readings.flowTest(id), model);
    }

    private String keptPage(FlowTestResult test, Model model) {
        Unit unit = pumps.unit(test.facts().unitId());
        model.addAttribute("page", FlowTestPage.of(test));
        model.addAttribute("pump", unit);
        model.addAttribute("recordedBy", name(test.recordedBy()));
        model.addAttribute(
                "withdrawnBy",
                test.withdrawn() == null ? null : name(test.withdrawn().by()));
        return "readings/kept-test";
    }

    private @Nullable String name(@Nullable Long personId) {
        return personId == null ? null : people.person(personId).fullName();
    }

    @PostMapping("/flow-tests/{id}/withdraw")
    String withdraw(
            @PathVariable long id,
            @ModelAttribute("form") WithdrawForm form,
            BindingResult errors,
            Model model,
            Person me,
            RedirectAttributes flash,
            HttpServletResponse response) {
        try {
            readings.withdrawFlowTest(id, Typed.textOrEmpty(form.why()), me);
            flash.addFlashAttribute("done", "readings.withdraw.done");
            return "redirect:/flow-tests/" + id;
        } catch (Refused refused) {
            refused.into(errors);
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return keptPage(readings.flowTest(id), model);
        }
    }
}
