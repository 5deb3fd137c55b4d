package freshet.readings;

import freshet.people.People;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Typed;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import jakarta.servlet.http.HttpServletResponse;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The pages on which a meter is read, swapped and looked back at. */
@Controller
class ReadingController {

    private final Readings readings;
    private final Pumps pumps;
    private final People people;
    private final Clock clock;

    ReadingController(Readings readings, Pumps pumps, People people, Clock clock) {
        this.readings = readings;
        this.pumps = pumps;
        this.people = people;
        this.clock = clock;
    }

    @ModelAttribute("way")
    String way() {
        return "pumps";
    }

    @GetMapping("/pumps/{id}/reading")
    String blank(@PathVariable long id, @RequestParam @Nullable String kind, Model model) {
        Unit unit = pumps.unit(id);
        MeterKind wanted = kind == null ? usualKind(id) : MeterKind.named(kind);
        model.addAttribute(
                "form", ReadingForm.blank(wanted, clock.instant(), unit.stand().zone()));
        return page(unit, model);
    }

    /** The hours, unless only starts were ever read on this unit. */
    private MeterKind usualKind(long id) {
        boolean onlyStarts = readings.log(id, MeterKind.RUN_HOURS).lines().isEmpty()
                && !readings.log(id, MeterKind.STARTS).lines().isEmpty();
        return onlyStarts ? MeterKind.STARTS : MeterKind.RUN_HOURS;
    }

    private String page(Unit unit, Model model) {
        model.addAttribute("pump", unit);
        model.addAttribute("hours", readings.log(unit.id(), MeterKind.RUN_HOURS));
        model.addAttribute("starts", readings.log(unit.id(), MeterKind.STARTS));
        return "readings/reading";
    }

    @PostMapping("/pumps/{id}/reading")
    String record(
            @PathVariable long id,
            @ModelAttribute("form") ReadingForm form,
            BindingResult errors,
            Model model,
            Person me,
            RedirectAttributes flash,
            HttpServletResponse response) {
        Unit unit = pumps.unit(id);
        try {
            ReadingDraft draft = form.draft(unit, me, clock.instant());
            Typed typed = new Typed(me);
            form.askAboutSlip(readings.log(id, draft.kind()).last(), draft, typed);
            typed.refuseIfWrong();
            readings.recordReading(draft, me);
            flash.addFlashAttribute("done", "readings.reading.done");
            return "redirect:/pumps/" + id;
        } catch (Refused refused) {
            refused.into(errors);
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(unit, model);
    }

    @GetMapping("/pumps/{id}/meter-swap")
    String blankSwap(@PathVariable long id, @RequestParam @Nullable String kind, Model model) {
        Unit unit = pumps.unit(id);
        MeterKind wanted = kind == null ? usualKind(id) : MeterKind.named(kind);
        MeterLog.Line last = readings.log(id, wanted).last();
        model.addAttribute(
                "form",
                SwapForm.blank(
                        wanted,
                        last == null ? null : last.value(),
                        clock.instant(),
                        unit.stand().zone()));
        model.addAttribute("pump", unit);
        return "readings/meter-swap";
    }

    @PostMapping("/pumps/{id}/meter-swap")
    String swap(
            @PathVariable long id,
            @ModelAttribute("form") SwapForm form,
            BindingResult errors,
            Model model,
            Person me,
            RedirectAttributes flash,
            HttpServletResponse response) {
        Unit unit = pumps.unit(id);
        try {
            swap(unit, form, me);
            flash.addFlashAttribute("done", "readings.swap.done");
            return "redirect:/pumps/" + id + "/readings";
        } catch (Refused refused) {
            refused.into(errors);
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        model.addAttribute("pump", unit);
        return "readings/meter-swap";
    }

    private void swap(Unit unit, SwapForm form, Person me) {
        Typed typed = new Typed(me);
        BigDecimal last =
                typed.required("lastValue", typed.exact("lastValue", form.lastValue()), "readings.lastValue.missing");
        BigDecimal first = typed.required(
                "firstValue", typed.exact("firstValue", form.firstValue()), "readings.firstValue.missing");
        Instant typedAt = typed.moment("at", form.at(), unit.stand().zone());
        BigDecimal rollsOverAt = typed.exact("rollsOverAt", form.rollsOverAt());
        typed.refuseIfWrong();
        Instant when = typedAt == null ? clock.instant() : typedAt;
        readings.swapMeter(
                unit.id(), MeterKind.named(form.kind()), when, last, first, rollsOverAt, Typed.text(form.note()), me);
    }

    @GetMapping("/pumps/{id}/readings")
    String log(@PathVariable long id, @RequestParam @Nullable Long withdraw, Model model) {
        model.addAttribute("form", new WithdrawForm(null));
        return logPage(pumps.unit(id), withdraw, model);
    }

    private String logPage(Unit unit, @Nullable Long withdraw, Model model) {
        Map<Long, String> names = people.everyone().stream().collect(Collectors.toMap(Person::id, Person::fullName));
        model.addAttribute("pump", unit);
        model.addAttribute("withdraw", withdraw);
        model.addAttribute("names", names);
        model.addAttribute(
                "logs",
                List.of(readings.log(unit.id(), MeterKind.RUN_HOURS), readings.log(unit.id(), MeterKind.STARTS)));
        model.addAttribute("duty", readings.dutyCycle(unit.id()).orElse(null));
        return "readings/log";
    }

    @PostMapping("/pumps/{id}/readings/{reading}/withdraw")
    String withdraw(
            @PathVariable long id,
            @PathVariable long reading,
            @ModelAttribute("form") WithdrawForm form,
            BindingResult errors,
            Model model,
            Person me,
            RedirectAttributes flash,
            HttpServletResponse response) {
        try {
            readings.withdrawReading(id, reading, Typed.textOrEmpty(form.why()), me);
            flash.addFlashAttribute("done", "readings.withdraw.done");
            return "redirect:/pumps/" + id + "/readings";
        } catch (Refused refused) {
            refused.into(errors);
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return logPage(pumps.unit(id), reading, model);
    }
}
