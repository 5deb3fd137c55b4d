package freshet.rounds;

import freshet.people.People;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Typed;
import freshet.places.Places;
import jakarta.servlet.http.HttpServletResponse;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.springframework.web.util.UriComponentsBuilder;

/** The work left by site and week, and what is done with many of its tasks at once. */
@Controller
class WorkController {

    private final Rounds rounds;
    private final Places places;
    private final People people;

    WorkController(Rounds rounds, Places places, People people) {
        this.rounds = rounds;
        this.places = places;
        this.people = people;
    }

    @ModelAttribute("way")
    String way() {
        return "season";
    }

    /** The tasks of one site that are due in one week; {@code chosen} is what a box for all of them sends. */
    record Group(long siteId, String siteName, LocalDate monday, int week, List<WorkLine> lines) {

        public int minutes() {
            return lines.stream().mapToInt(WorkLine::minutes).sum();
        }

        public String chosen() {
            return lines.stream().map(WorkLine::chosen).collect(Collectors.joining(","));
        }
    }

    @GetMapping("/season/work")
    String work(
            @RequestParam(required = false) @Nullable String site,
            @RequestParam(required = false) @Nullable String week,
            @RequestParam(defaultValue = "1") String page,
            Model model) {
        int at = page.matches("\\d{1,6}") ? Math.max(Integer.parseInt(page), 1) : 1;
        Long siteId = site != null && site.matches("\\d{1,15}") ? Long.valueOf(site) : null;
        LocalDate monday = monday(week);
        WorkQuery query = WorkQuery.of(siteId, monday, at - 1);
        int found = rounds.countWork(query);
        model.addAttribute("groups", groups(rounds.work(query)));
        model.addAttribute("found", found);
        model.addAttribute("pages", Math.max(1, (found + query.size() - 1) / query.size()));
        model.addAttribute("page", at);
        model.addAttribute("site", siteId);
        model.addAttribute("week", monday);
        model.addAttribute("sites", places.sites());
        model.addAttribute("hands", RoundController.hands(people));
        return "rounds/work";
    }

    private static List<Group> groups(List<WorkLine> lines) {
        List<Group> groups = new ArrayList<>();
        for (WorkLine line : lines) {
            Group last = groups.isEmpty() ? null : groups.get(groups.size() - 1);
            if (last == null || last.siteId() != line.siteId() || !last.monday().equals(line.monday())) {
                last = new Group(line.siteId(), line.siteName(), line.monday(), line.week(), new ArrayList<>());
                groups.add(last);
            }
            last.lines().add(line);
        }
        return groups;
    }

    private static @Nullable LocalDate monday(@Nullable String week) {
        try {
            String text = Typed.text(week);
            LocalDate day = text == null || text.length() != 10 ? null : LocalDate.parse(text);
            return day == null ? null : day.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
        } catch (DateTimeParseException none) {
            return null;
        }
    }

    /** The press says what is wanted with the chosen tasks: a round, the pile of their checklists, or a person for them. */
    @PostMapping("/season/work")
    String press(
            @RequestParam(required = false) @Nullable List<String> chosen,
            @RequestParam(defaultValue = "") String press,
            @RequestParam(required = false) @Nullable String person,
            @RequestParam(required = false) @Nullable String site,
            @RequestParam(required = false) @Nullable String week,
            @RequestParam(defaultValue = "1") String page,
            Model model,
            Person me,
            HttpServletResponse response,
            RedirectAttributes flash) {
        List<Chosen> tasks = Chosen.read(chosen);
        try {
            if (tasks.isEmpty()) {
                throw Refused.because("", "rounds.nothingChosen");
            }
            if (press.equals("print")) {
                rounds.asChosen(tasks);
                return "redirect:"
                        + address("/rounds/print", "tasks", tasks.stream().map(task -> String.valueOf(task.taskId())));
            }
            if (press.equals("assign")) {
                rounds.assign(tasks, personId(person), me);
                flash.addFlashAttribute("done", "rounds.assigned");
                return "redirect:" + back(site, week);
            }
            return "redirect:" + address("/rounds/new", "chosen", tasks.stream().map(Chosen::toString));
        } catch (TasksChanged changed) {
            return PlanController.changed(changed, tasks, model, response);
        } catch (Refused refused) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            model.addAttribute("refused", refused.wrongs().get(0));
            model.addAttribute("ticked", tasks.stream().map(Chosen::toString).toList());
            return work(site, week, page, model);
        }
    }

    private static @Nullable Long personId(@Nullable String person) {
        String text = Typed.text(person);
        return text == null ? null : Long.valueOf(text.matches("\\d{1,15}") ? text : "-1");
    }

    private static String address(String path, String name, java.util.stream.Stream<String> values) {
        return UriComponentsBuilder.fromPath(path)
                .queryParam(name, values.collect(Collectors.joining(",")))
                .toUriString();
    }

    private static String back(@Nullable String site, @Nullable String week) {
        UriComponentsBuilder back = UriComponentsBuilder.fromPath("/season/work");
        if (site != null && site.matches("\\d{1,15}")) {
            back.queryParam("site", site);
        }
        LocalDate monday = monday(week);
        if (monday != null) {
            back.queryParam("week", monday);
        }
        return back.toUriString();
    }
}
