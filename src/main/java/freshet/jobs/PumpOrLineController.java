package freshet.jobs;

import freshet.hydraulics.Pattern;
import freshet.measures.Show;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Typed;
import freshet.pumps.Pumps;
import freshet.readings.FlowTestDraft;
import freshet.readings.PieceForm;
import freshet.readings.Readings;
import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
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

/** A pump seems weak: what the line takes, what wear takes, what cannot be told, and what to look at next. */
@Controller
class PumpOrLineController {

    private static final int SYMPTOMS = 12;

    private final Pumps pumps;
    private final Readings readings;
    private final PumpDesk desk;
    private final MessageSource messages;

    PumpOrLineController(Pumps pumps, Readings readings, PumpDesk desk, MessageSource messages) {
        this.pumps = pumps;
        this.readings = readings;
        this.desk = desk;
        this.messages = messages;
    }

    @ModelAttribute("way")
    String way() {
        return "jobs";
    }

    /** A kept test named by its id is worked out at once; else the press says what is wanted, and without one the page only asks. */
    @GetMapping("/jobs/pump-or-line")
    String split(
            @RequestParam(name = "press", defaultValue = "") String pressedNow,
            @RequestParam(required = false) @Nullable String pressed,
            @RequestParam(required = false) @Nullable Long test,
            @ModelAttribute("form") SplitForm asTyped,
            Model model,
            Person me,
            @ModelAttribute("show") Show show,
            Locale locale,
            HttpServletResponse response) {
        SplitForm form = asTyped.readIn(me.unitSystem());
        String press = Typed.press(pressedNow, pressed);
        if (PieceForm.changes(press)) {
            return page(form.withPieces(PieceForm.pressed(form.pieces(), press)), model);
        }
        if (test != null) {
            FlowTestDraft facts = readings.flowTest(test).facts();
            form = SplitForm.of(facts, pumps.unit(facts.unitId()).tag(), me.unitSystem());
        } else if (!press.equals("work")) {
            return page(begun(form), model);
        }
        Typed typed = new Typed(me);
        Chosen pump = desk.find(form.unit(), form.model(), typed);
        Measured measured = SplitReader.measured(form, typed, pump);
        page(form, model);
        try {
            typed.refuseIfWrong();
            Words words = new Words(messages, show, locale);
            Split split = Split.of(Objects.requireNonNull(pump), Objects.requireNonNull(measured));
            SplitPage page = SplitPage.of(split, words);
            model.addAttribute("words", words);
            model.addAttribute("page", page);
            model.addAttribute("symptoms", page.symptoms());
        } catch (Refused refused) {
            BindingResult errors = new BeanPropertyBindingResult(form, "form");
            refused.into(errors);
            model.addAttribute(BindingResult.MODEL_KEY_PREFIX + "form", errors);
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        }
        return "jobs/pump-or-line";
    }

    private static SplitForm begun(SplitForm form) {
        return form.pieces().isEmpty() ? form.withPieces(List.of(PieceForm.blank(PieceForm.Family.HOSE))) : form;
    }

    private String page(SplitForm form, Model model) {
        model.addAttribute("form", form);
        model.addAttribute("models", pumps.models());
        model.addAttribute("hoses", PieceForm.HOSES);
        model.addAttribute("fittings", PieceForm.FITTINGS);
        model.addAttribute("readings", Pattern.Reading.values());
        model.addAttribute("patterns", Pattern.values());
        model.addAttribute("symptoms", Symptoms.NONE);
        model.addAttribute("diagnoses", SYMPTOMS);
        return "jobs/pump-or-line";
    }
}
