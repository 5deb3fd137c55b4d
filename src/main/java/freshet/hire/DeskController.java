package freshet.hire;

import freshet.care.Care;
import freshet.care.Task;
import freshet.fleet.Fleet;
import freshet.fleet.Readiness;
import freshet.fleet.Reason;
import freshet.people.FormAnswer;
import freshet.people.Person;
import freshet.people.Typed;
import freshet.places.Places;
import freshet.places.Site;
import freshet.places.Span;
import freshet.places.WindowKind;
import freshet.pumps.PumpKind;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
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

/** The hire desk: what is out and until when, what is back, its figures, and who was turned away. */
@Controller
class DeskController {

    private static final int ROWS = 30;
    /** Due back within so many days is soon. */
    private static final int SOON_DAYS = 2;

    private final Hires hires;
    private final Fleet fleet;
    private final Care care;
    private final Places places;
    private final Clock clock;

    DeskController(Hires hires, Fleet fleet, Care care, Places places, Clock clock) {
        this.hires = hires;
        this.fleet = fleet;
        this.care = care;
        this.places = places;
        this.clock = clock;
    }

    @ModelAttribute("way")
    String way() {
        return "pumps";
    }

    /** A unit that is out, with the work that falls due, the proofs that run out and the closings that begin before it is back. */
    record Line(Hire hire, long daysOver, List<Task> due, List<Reason> expires, List<Span> closings) {

        public boolean late() {
            return daysOver > 0;
        }

        public boolean soon() {
            return !late() && daysOver >= -SOON_DAYS;
        }
    }

    /** What was typed about the line that stands on every sheet. */
    record LineForm(@Nullable String emergencyLine) {}

    @GetMapping("/hires")
    String desk(
            @RequestParam(defaultValue = "1") String page, @RequestParam(defaultValue = "1") String past, Model model) {
        model.addAttribute("form", new LineForm(hires.emergencyLine().orElse(null)));
        return deskPage(page, past, model);
    }

    private String deskPage(String page, String past, Model model) {
        Hires.Count count = hires.count();
        model.addAttribute("count", count);
        int outPages = pages(count.out());
        int outAt = at(page, outPages);
        model.addAttribute("lines", lines(hires.out(outAt - 1, ROWS)));
        model.addAttribute("page", outAt);
        model.addAttribute("pages", outPages);
        int pastPages = pages(count.back());
        int pastAt = at(past, pastPages);
        model.addAttribute("past", hires.past(pastAt - 1, ROWS));
        model.addAttribute("pastPage", pastAt);
        model.addAttribute("pastPages", pastPages);
        return "hire/desk";
    }

    private static int pages(int rows) {
        return Math.max(1, (rows + ROWS - 1) / ROWS);
    }

    private static int at(String page, int pages) {
        return page.matches("\\d{1,6}") ? Math.min(Math.max(Integer.parseInt(page), 1), pages) : 1;
    }

    private List<Line> lines(List<Hire> out) {
        Map<Long, Readiness> readiness =
                fleet.readiness(out.stream().map(Hire::unitId).toList());
        Map<Long, Site> sites = places.sites(out.stream().map(Hire::siteId).collect(Collectors.toSet()));
        return out.stream()
                .map(hire -> line(hire, readiness.get(hire.unitId()), Objects.requireNonNull(sites.get(hire.siteId()))))
                .toList();
    }

    private Line line(Hire hire, @Nullable Readiness readiness, Site site) {
        LocalDate today = site.today(clock);
        LocalDate last = hire.dueBackOn().isBefore(today) ? today : hire.dueBackOn();
        List<Task> due = care.tasksOf(hire.unitId()).stream()
                .filter(task -> task.open() && !task.dueOn().isAfter(last))
                .toList();
        List<Reason> expires = readiness == null
                ? List.of()
                : readiness.reasons().stream()
                        .filter(reason ->
                                reason.until() != null && reason.until().isBefore(last))
                        .toList();
        List<Span> closings = site.windows().stream()
                .filter(window -> window.kind() == WindowKind.CLOSING)
                .flatMap(window -> window.spans(today, last).stream())
                .toList();
        return new Line(hire, hire.daysOver(today), due, expires, closings);
    }

    @PostMapping("/hires/emergency-line")
    @PreAuthorize("hasRole('OWNER')")
    String emergencyLine(
            @ModelAttribute("form") LineForm form,
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
                    hires.setEmergencyLine(Typed.text(form.emergencyLine()), me);
                    flash.addFlashAttribute("done", "hire.emergencyLine.kept");
                    return "redirect:/hires";
                },
                () -> deskPage("1", "1", model));
    }

    @GetMapping("/hires/figures")
    String figures(@RequestParam @Nullable String from, @RequestParam @Nullable String to, Model model) {
        LocalDate today = LocalDate.now(clock);
        LocalDate last = day(to, today);
        LocalDate end = last.isAfter(today) ? today : last;
        LocalDate first = day(from, end.minusYears(1).plusDays(1));
        // no yard has figures of a longer time on one page
        LocalDate oldest = end.minusYears(10);
        LocalDate begin = first.isAfter(end) ? end : first.isBefore(oldest) ? oldest : first;
        model.addAttribute("figures", hires.figures(begin, end));
        return "hire/figures";
    }

    private static LocalDate day(@Nullable String text, LocalDate usual) {
        boolean plain = text != null && text.matches("(19|20)\\d\\d-(0[1-9]|1[0-2])-(0[1-9]|[12]\\d|3[01])");
        try {
            return plain ? LocalDate.parse(text) : usual;
        } catch (DateTimeParseException noSuchDay) {
            return usual;
        }
    }

    /** What was typed about somebody who went without a pump. */
    record TurnAwayForm(
            @Nullable String site,
            @Nullable String on,
            @Nullable String reason,
            @Nullable String kind,
            @Nullable String note) {}

    @GetMapping("/hires/turn-away")
    String blankTurnAway(Model model) {
        model.addAttribute("form", new TurnAwayForm(null, null, null, null, null));
        return turnAwayPage(model);
    }

    private String turnAwayPage(Model model) {
        model.addAttribute("sites", yards());
        model.addAttribute("reasons", TurnAwayReason.values());
        model.addAttribute("kinds", PumpKind.values());
        return "hire/turn-away";
    }

    /** Our own places: nobody is turned away at a customer's. */
    private List<Site> yards() {
        return places.sites().stream().filter(site -> site.customerId() == null).toList();
    }

    @PostMapping("/hires/turn-away")
    String turnAway(
            @ModelAttribute("form") TurnAwayForm form,
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
                    hires.turnAway(draft(form, me), me);
                    flash.addFlashAttribute("done", "hire.turnAway.kept");
                    return "redirect:/hires";
                },
                () -> turnAwayPage(model));
    }

    private TurnAwayDraft draft(TurnAwayForm form, Person me) {
        Typed typed = new Typed(me);
        Site site = typed.required(
                "site",
                yards().stream()
                        .filter(each -> String.valueOf(each.id()).equals(form.site()))
                        .findFirst()
                        .orElse(null),
                "hire.turnAway.site.choose");
        TurnAwayReason reason =
                typed.required("reason", choice(TurnAwayReason.values(), form.reason()), "hire.turnAway.reason.choose");
        LocalDate on = typed.day("on", form.on());
        typed.refuseIfWrong();
        return new TurnAwayDraft(
                Objects.requireNonNull(site).id(),
                on,
                Objects.requireNonNull(reason),
                choice(PumpKind.values(), form.kind()),
                Typed.text(form.note()));
    }

    private static <E extends Enum<E>> @Nullable E choice(E[] values, @Nullable String name) {
        return Stream.of(values)
                .filter(each -> each.name().equals(name))
                .findFirst()
                .orElse(null);
    }
}
