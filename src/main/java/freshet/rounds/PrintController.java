package freshet.rounds;

import freshet.care.Care;
import freshet.care.Worksheet;
import freshet.checklists.AnswerKind;
import freshet.checklists.CheckLine;
import freshet.checklists.Choice;
import freshet.checklists.LimitWords;
import freshet.people.Person;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;

/** Blank checklists to take along: one sheet a task, in the order of the round. */
@Controller
class PrintController {

    private static final int MOST = 200;

    private final Rounds rounds;
    private final Care care;
    private final MessageSource messages;

    PrintController(Rounds rounds, Care care, MessageSource messages) {
        this.rounds = rounds;
        this.care = care;
        this.messages = messages;
    }

    @ModelAttribute("way")
    String way() {
        return "today";
    }

    /** One task's sheet; {@code stop} is null when it is printed outside a round. */
    record Sheet(Worksheet work, @Nullable Stop stop, List<Line> lines) {}

    /** A line to be answered by hand; {@code heading} is its section where that begins. */
    record Line(
            CheckLine check,
            @Nullable String heading,
            List<String> cautions,
            @Nullable String limits,
            @Nullable String unit,
            List<String> boxes) {}

    @GetMapping("/rounds/{id}/print")
    String round(@PathVariable long id, Model model, Person me) {
        Round round = rounds.round(id);
        model.addAttribute("round", round);
        model.addAttribute(
                "looks",
                round.left().stream().filter(stop -> stop.taskId() == null).toList());
        return page(
                round.stops().stream()
                        .filter(stop -> stop.left() && stop.taskId() != null)
                        .map(stop -> sheet(Objects.requireNonNull(stop.taskId()), stop, me))
                        .toList(),
                model);
    }

    @GetMapping("/rounds/print")
    String tasks(@RequestParam(required = false) @Nullable List<String> tasks, Model model, Person me) {
        return page(
                (tasks == null ? List.<String>of() : tasks)
                        .stream()
                                .filter(task -> task.matches("\\d{1,15}"))
                                .distinct()
                                .limit(MOST)
                                .map(task -> sheet(Long.parseLong(task), null, me))
                                .toList(),
                model);
    }

    private String page(List<Sheet> sheets, Model model) {
        model.addAttribute("sheets", sheets);
        return "rounds/print";
    }

    private Sheet sheet(long taskId, @Nullable Stop stop, Person me) {
        Worksheet work = care.worksheet(taskId);
        LimitWords words = LimitWords.of(messages, me);
        List<Line> lines = new ArrayList<>();
        String section = "";
        for (CheckLine check : work.checklist().lines()) {
            lines.add(new Line(
                    check,
                    check.section().equals(section) ? null : check.section(),
                    check.caution() == null
                            ? List.of()
                            : check.caution().lines().toList(),
                    check.limitsInWords(work.unit().model().ratings(), words),
                    check.unitFor(me.unitSystem()),
                    check.kind() == AnswerKind.CHOICE
                            ? check.choices().stream().map(Choice::words).toList()
                            : List.of()));
            section = check.section();
        }
        return new Sheet(work, stop, lines);
    }
}
