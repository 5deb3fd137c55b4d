package freshet.rounds;

import freshet.people.People;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Typed;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The list of rounds, and the page by which one is gone. */
@Controller
class RoundController {

    private static final int PAST = 30;
    private static final int LEFT_OVER = 200;

    private final Rounds rounds;
    private final People people;
    private final Clock clock;

    RoundController(Rounds rounds, People people, Clock clock) {
        this.rounds = rounds;
        this.people = people;
        this.clock = clock;
    }

    @ModelAttribute("way")
    String way() {
        return "today";
    }

    @GetMapping("/rounds")
    String list(Model model, Person me) {
        LocalDate today = LocalDate.now(clock);
        List<Round> coming = rounds.rounds(today.minusDays(1));
        model.addAttribute("today", today);
        model.addAttribute(
                "mine",
                coming.stream()
                        .filter(round -> round.personId() != null && round.personId() == me.id())
                        .toList());
        model.addAttribute(
                "others",
                coming.stream()
                        .filter(round -> round.personId() == null || round.personId() != me.id())
                        .toList());
        model.addAttribute("leftOver", rounds.leftOver(today, LEFT_OVER));
        model.addAttribute("past", rounds.before(today.minusDays(1), PAST));
        return "rounds/list";
    }

    @GetMapping("/rounds/{id}")
    String round(@PathVariable long id, Model model) {
        model.addAttribute("round", rounds.round(id));
        return "rounds/round";
    }

    @PostMapping("/rounds/{id}/stops/{stopId}/seen")
    String seen(
            @PathVariable long id,
            @PathVariable long stopId,
            Person me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes flash) {
        try {
            rounds.seen(id, stopId, me);
        } catch (Refused refused) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            model.addAttribute("refused", refused.wrongs().get(0));
            return round(id, model);
        }
        flash.addFlashAttribute("done", "rounds.seen.done");
        return "redirect:/rounds/" + id;
    }

    /** What was typed of a shut door; the time is the place's own, empty is now. */
    record NoAccessForm(
            @Nullable NoAccessWhy reason,
            @Nullable String note,
            @Nullable String at) {}

    @GetMapping("/rounds/{id}/stops/{stopId}/no-access")
    String noAccess(@PathVariable long id, @PathVariable long stopId, Model model) {
        model.addAttribute("form", new NoAccessForm(NoAccessWhy.NOBODY_THERE, null, null));
        return noAccessPage(id, stopId, model);
    }

    private String noAccessPage(long id, long stopId, Model model) {
        Round round = rounds.round(id);
        model.addAttribute("round", round);
        model.addAttribute("stop", Rounds.stopOf(round, stopId));
        model.addAttribute("reasons", NoAccessWhy.values());
        return "rounds/no-access";
    }

    @PostMapping("/rounds/{id}/stops/{stopId}/no-access")
    String noteNoAccess(
            @PathVariable long id,
            @PathVariable long stopId,
            @ModelAttribute("form") NoAccessForm form,
            BindingResult errors,
            Model model,
            Person me,
            HttpServletResponse response,
            RedirectAttributes flash) {
        Stop stop = Rounds.stopOf(rounds.round(id), stopId);
        return freshet.people.FormAnswer.of(
                errors,
                model,
                response,
                () -> {
                    Typed typed = new Typed(me);
                    Instant at = typed.moment("at", form.at(), stop.zone());
                    NoAccessWhy why = typed.required("reason", form.reason(), "rounds.noAccess.why");
                    typed.refuseIfWrong();
                    rounds.noAccess(id, stopId, java.util.Objects.requireNonNull(why), Typed.text(form.note()), at, me);
                    flash.addFlashAttribute("done", "rounds.noAccess.noted");
                    return "redirect:/rounds/" + id;
                },
                () -> noAccessPage(id, stopId, model));
    }

    /** Everybody who may go. */
    static List<Person> hands(People people) {
        return people.everyone().stream().filter(Person::active).toList();
    }

    /** What was typed about how one gets in. */
    record AccessForm(@Nullable String note, @Nullable Integer version) {}

    @GetMapping("/rounds/access/{siteId}")
    String access(@PathVariable long siteId, Model model) {
        AccessNote note = rounds.access(siteId);
        model.addAttribute("form", new AccessForm(note.note(), note.version()));
        return accessPage(siteId, note, model);
    }

    private String accessPage(long siteId, AccessNote note, Model model) {
        model.addAttribute("site", rounds.site(siteId));
        model.addAttribute("note", note);
        return "rounds/access";
    }

    @PostMapping("/rounds/access/{siteId}")
    String writeAccess(
            @PathVariable long siteId,
            @ModelAttribute("form") AccessForm form,
            BindingResult errors,
            Model model,
            Person me,
            HttpServletResponse response,
            RedirectAttributes flash) {
        AccessNote now = rounds.access(siteId);
        return freshet.people.FormAnswer.of(
                errors,
                model,
                response,
                () -> {
                    int version = form.version() == null ? now.version() : form.version();
                    rounds.writeAccess(siteId, version, Typed.textOrEmpty(form.note()), me);
                    flash.addFlashAttribute("done", "rounds.access.written");
                    return "redirect:/places/sites/" + siteId;
                },
                () -> accessPage(siteId, rounds.access(siteId), model));
    }
}
