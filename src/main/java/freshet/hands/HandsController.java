package freshet.hands;

import freshet.people.FormAnswer;
import freshet.people.NotAllowed;
import freshet.people.Person;
import freshet.people.Typed;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.time.temporal.IsoFields;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The pages on which it is written who has how much time for care work. */
@Controller
class HandsController {

    private static final int WEEKS = 26;

    private final Hands hands;
    private final Clock clock;

    HandsController(Hands hands, Clock clock) {
        this.hands = hands;
        this.clock = clock;
    }

    @ModelAttribute("way")
    String way() {
        return "season";
    }

    /** What is added for findings, as typed. */
    record FindingsForm(@Nullable String percent, @Nullable Integer version) {}

    @GetMapping("/season/hands")
    String list(Model model) {
        FindingsShare findings = hands.findings();
        model.addAttribute("form", new FindingsForm(String.valueOf(findings.percent()), findings.version()));
        return listPage(model);
    }

    private String listPage(Model model) {
        List<Hand> all = hands.hands();
        model.addAttribute("findings", hands.findings());
        model.addAttribute("hands", all);
        model.addAttribute("monday", Forecast.monday(LocalDate.now(clock)));
        model.addAttribute("total", all.stream().mapToInt(Hand::minutesAWeek).sum());
        return "hands/list";
    }

    @PostMapping("/season/hands")
    String findings(
            @ModelAttribute("form") FindingsForm form,
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
                    Double percent =
                            typed.required("percent", typed.number("percent", form.percent()), "hands.percent.missing");
                    typed.refuseIfWrong();
                    hands.writeFindings(Objects.requireNonNullElse(form.version(), -2), rounded(percent), me);
                    flash.addFlashAttribute("done", "hands.saved");
                    return "redirect:/season/hands";
                },
                () -> listPage(model));
    }

    private static int rounded(@Nullable Double value) {
        return (int) Math.round(Math.min(Math.max(value == null ? 0 : value, -1), 1e6));
    }

    /** A person's hours a week as typed, and the Mondays of the weeks off. */
    record HandForm(
            @Nullable String hours,
            @Nullable List<String> off,
            @Nullable Integer version) {

        public boolean away(LocalDate monday) {
            return off != null && off.contains(monday.toString());
        }

        Set<LocalDate> mondays() {
            Set<LocalDate> mondays = new HashSet<>();
            for (String each : off == null ? List.<String>of() : off) {
                try {
                    if (each != null && each.length() == 10) {
                        mondays.add(LocalDate.parse(each));
                    }
                } catch (DateTimeParseException never) {
                    // no page of ours sends it
                }
            }
            return mondays;
        }
    }

    /** A week to be away in. */
    record Week(LocalDate monday, int number) {}

    @GetMapping("/season/hands/{personId}")
    String hand(@PathVariable long personId, Model model, Person me) {
        Hand hand = hands.hand(personId);
        model.addAttribute(
                "form",
                new HandForm(
                        hours(hand.minutesAWeek()),
                        hand.weeksOff().stream().map(LocalDate::toString).toList(),
                        hand.version()));
        return handPage(hand, model, me);
    }

    private static String hours(int minutes) {
        return new java.math.BigDecimal(minutes)
                .divide(new java.math.BigDecimal(60), 2, java.math.RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
    }

    private String handPage(Hand hand, Model model, Person me) {
        if (!me.owner() && me.id() != hand.personId()) {
            throw new NotAllowed("hands of others");
        }
        LocalDate monday = Forecast.monday(LocalDate.now(clock));
        model.addAttribute("hand", hand);
        model.addAttribute(
                "weeks",
                IntStream.range(0, WEEKS)
                        .mapToObj(monday::plusWeeks)
                        .map(each -> new Week(each, each.get(IsoFields.WEEK_OF_WEEK_BASED_YEAR)))
                        .toList());
        return "hands/hand";
    }

    @PostMapping("/season/hands/{personId}")
    String write(
            @PathVariable long personId,
            @ModelAttribute("form") HandForm form,
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
                    Double hours = typed.required("hours", typed.hours("hours", form.hours()), "hands.hours.missing");
                    typed.refuseIfWrong();
                    int minutes = rounded(hours == null ? null : hours * 60);
                    hands.write(personId, Objects.requireNonNullElse(form.version(), -2), minutes, form.mondays(), me);
                    flash.addFlashAttribute("done", "hands.saved");
                    return "redirect:/season/hands";
                },
                () -> handPage(hands.hand(personId), model, me));
    }
}
