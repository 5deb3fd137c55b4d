package freshet.rounds;

import freshet.people.Difference;
import freshet.people.FormAnswer;
import freshet.people.People;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
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

/** The pages on which a round is planned, changed, put in order and given up. */
@Controller
class PlanController {

    private final Rounds rounds;
    private final People people;
    private final Pumps pumps;
    private final Clock clock;

    PlanController(Rounds rounds, People people, Pumps pumps, Clock clock) {
        this.rounds = rounds;
        this.people = people;
        this.pumps = pumps;
        this.clock = clock;
    }

    @ModelAttribute("way")
    String way() {
        return "today";
    }

    @GetMapping("/rounds/new")
    String blank(
            @RequestParam(required = false) @Nullable List<String> chosen,
            @RequestParam(required = false) @Nullable List<String> units,
            Model model,
            Person me) {
        String day = LocalDate.now(clock).plusDays(1).toString();
        model.addAttribute("form", new RoundForm(null, day, String.valueOf(me.id()), chosen, units, null));
        return newPage(Chosen.read(chosen), model);
    }

    private String newPage(List<Chosen> chosen, Model model) {
        model.addAttribute("lines", rounds.chosenWork(chosen));
        model.addAttribute("hands", RoundController.hands(people));
        return "rounds/new";
    }

    @PostMapping("/rounds/new")
    String plan(
            @ModelAttribute("form") RoundForm form,
            BindingResult errors,
            Model model,
            Person me,
            HttpServletResponse response,
            RedirectAttributes flash) {
        try {
            return FormAnswer.of(
                    errors,
                    model,
                    response,
                    () -> {
                        long id = rounds.plan(form.draft(me), me);
                        flash.addFlashAttribute("done", "rounds.planned");
                        return "redirect:/rounds/" + id;
                    },
                    () -> newPage(Chosen.read(form.chosen()), model));
        } catch (TasksChanged changed) {
            return changed(changed, Chosen.read(form.chosen()), model, response);
        }
    }

    /** Names what changed, and offers the rest to be chosen as it stands now. */
    static String changed(TasksChanged changed, List<Chosen> chosen, Model model, HttpServletResponse response) {
        response.setStatus(HttpStatus.CONFLICT.value());
        model.addAttribute("changed", changed.tasks());
        model.addAttribute("unchanged", chosen.size() - changed.tasks().size());
        return "rounds/changed";
    }

    @GetMapping("/rounds/{id}/edit")
    String edit(@PathVariable long id, Model model) {
        Round round = rounds.round(id);
        model.addAttribute("form", RoundForm.of(round));
        return editPage(round, model);
    }

    private String editPage(Round round, Model model) {
        model.addAttribute("round", round);
        model.addAttribute("hands", RoundController.hands(people));
        return "rounds/edit";
    }

    @PostMapping("/rounds/{id}/edit")
    String change(
            @PathVariable long id,
            @ModelAttribute("form") RoundForm form,
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
                    rounds.change(id, Objects.requireNonNullElse(form.version(), -1), form.draft(me), me);
                    flash.addFlashAttribute("done", "rounds.saved");
                    return "redirect:/rounds/" + id;
                },
                () -> {
                    Round now = rounds.round(id);
                    if (model.containsAttribute("stale")) {
                        String who = Objects.requireNonNullElse(now.personName(), "");
                        model.addAttribute(
                                "standsNow",
                                Difference.between("rounds.form", form, RoundForm.of(now), Map.of("person", who)));
                    }
                    return editPage(now, model);
                });
    }

    /** The press says which stop and what: {@code up-17}, {@code down-17}, {@code off-17}; or adds the pump with a tag. */
    @PostMapping("/rounds/{id}/stops")
    String stops(
            @PathVariable long id,
            @RequestParam(defaultValue = "") String press,
            @RequestParam(defaultValue = "") String tag,
            Model model,
            Person me,
            HttpServletResponse response) {
        Round round = rounds.round(id);
        try {
            if (press.equals("work") || press.equals("look")) {
                add(round, tag.strip(), press.equals("work"), me);
            } else if (press.matches("(up|down|off)-\\d{1,15}")) {
                String what = press.substring(0, press.indexOf('-'));
                Stop stop = Rounds.stopOf(round, Long.parseLong(press.substring(press.indexOf('-') + 1)));
                switch (what) {
                    case "up" -> rounds.move(id, stop.id(), stop.place() - 1, me);
                    case "down" -> rounds.move(id, stop.id(), stop.place() + 1, me);
                    default -> rounds.remove(id, stop.id(), me);
                }
            }
        } catch (Refused refused) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            model.addAttribute("refused", refused.wrongs().get(0));
            model.addAttribute("tag", tag);
            return edit(id, model);
        } catch (TasksChanged changed) {
            return changed(changed, List.of(), model, response);
        }
        return "redirect:/rounds/" + id + "/edit#stops";
    }

    private void add(Round round, String tag, boolean work, Person me) {
        Unit unit = pumps.unitTagged(tag).orElseThrow(() -> Refused.because("tag", "rounds.add.noTag"));
        if (!work) {
            rounds.add(round.id(), List.of(), List.of(unit.id()), me);
            return;
        }
        List<Long> due = rounds.dueTasks(unit.id(), round.day());
        if (due.isEmpty()) {
            throw Refused.because("tag", "rounds.add.nothingDue", unit.tag());
        }
        rounds.add(round.id(), due, List.of(), me);
    }

    @PostMapping("/rounds/{id}/give-up")
    String giveUp(@PathVariable long id, Person me, RedirectAttributes flash) {
        if (!rounds.round(id).withdrawn()) {
            rounds.withdraw(id, me);
        }
        flash.addFlashAttribute("done", "rounds.givenUp");
        return "redirect:/rounds";
    }
}
