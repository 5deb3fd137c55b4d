package freshet.jobs;

import freshet.measures.Show;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Typed;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import freshet.readings.PieceForm;
import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSource;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BeanPropertyBindingResult;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.RequestParam;

/** The sheet of a job: what it asks, what a pump gives for it and why, and which of our units can do it. */
@Controller
class JobSheetController {

    private static final String WORK = "work";

    private final Pumps pumps;
    private final PumpDesk desk;
    private final UnitMatcher units;
    private final MessageSource messages;

    JobSheetController(Pumps pumps, PumpDesk desk, UnitMatcher units, MessageSource messages) {
        this.pumps = pumps;
        this.desk = desk;
        this.units = units;
        this.messages = messages;
    }

    @ModelAttribute("way")
    String way() {
        return "jobs";
    }

    @GetMapping("/jobs")
    String index() {
        return "jobs/index";
    }

    /** The press says what is wanted: to work it out, to add a piece or to take one out; without one the page only asks. */
    @GetMapping("/jobs/sheet")
    String sheet(
            @RequestParam(name = "press", defaultValue = "") String pressedNow,
            @RequestParam(required = false) @Nullable String pressed,
            @ModelAttribute("form") JobForm asTyped,
            Model model,
            Person me,
            @ModelAttribute("show") Show show,
            Locale locale,
            HttpServletResponse response) {
        JobForm form = asTyped.readIn(me.unitSystem());
        String press = Typed.press(pressedNow, pressed);
        if (PieceForm.changes(press)) {
            return page(form.withPieces(PieceForm.pressed(form.pieces(), press)), model);
        }
        if (!press.equals(WORK)) {
            return page(begun(form, me), model);
        }
        Typed typed = new Typed(me);
        Job job = JobReader.job(form, typed);
        Chosen pump = desk.find(form.unit(), form.model(), typed);
        page(form, model);
        try {
            typed.refuseIfWrong();
            Words words = new Words(messages, show, locale);
            model.addAttribute("words", words);
            model.addAttribute(
                    "page", SheetPage.of(Objects.requireNonNull(job), pump, form, units.matches(job), words));
        } catch (Refused refused) {
            BindingResult errors = new BeanPropertyBindingResult(form, "form");
            refused.into(errors);
            model.addAttribute(BindingResult.MODEL_KEY_PREFIX + "form", errors);
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        }
        return "jobs/sheet";
    }

    /** A blank job begins with the hoses and adapters that go with the unit. */
    private JobForm begun(JobForm form, Person me) {
        if (!form.pieces().isEmpty()) {
            return form;
        }
        String tag = Typed.text(form.unit());
        return form.withPieces((tag == null ? Optional.<Unit>empty() : pumps.unitTagged(tag))
                .map(unit -> PieceForm.of(unit, me.unitSystem()))
                .orElseGet(() -> List.of(PieceForm.blank(PieceForm.Family.HOSE))));
    }

    private String page(JobForm form, Model model) {
        model.addAttribute("form", form);
        model.addAttribute("models", pumps.models());
        model.addAttribute("cords", CordSize.values());
        model.addAttribute("hoses", PieceForm.HOSES);
        model.addAttribute("fittings", PieceForm.FITTINGS);
        return "jobs/sheet";
    }
}
