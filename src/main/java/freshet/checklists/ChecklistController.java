package freshet.checklists;

import freshet.people.Person;
import freshet.pumps.PumpKind;
import freshet.pumps.Ratings;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;

/** The pages on which checklists are read: all of them, one as a technician sees it, each of its versions, and a blank one on paper. */
@Controller
class ChecklistController {

    private final Checklists checklists;
    private final MessageSource messages;

    ChecklistController(Checklists checklists, MessageSource messages) {
        this.messages = messages;
        this.checklists = checklists;
    }

    /** A line as it is read; {@code heading} is its section where that begins, limits that hang on a plate are fractions of its figure. */
    record Row(
            CheckLine check,
            @Nullable String heading,
            List<String> cautions,
            @Nullable String limits,
            @Nullable String unit) {}

    record Shelf(@Nullable PumpKind kind, List<Checklist> checklists) {}

    @ModelAttribute("way")
    String way() {
        return "today";
    }

    @GetMapping("/checklists")
    String checklists(Model model) {
        List<Checklist> all = checklists.checklists();
        List<Shelf> shelves = new ArrayList<>();
        for (PumpKind kind : PumpKind.values()) {
            shelves.add(shelf(kind, all));
        }
        shelves.add(shelf(null, all));
        Map<Long, Edition> editions = checklists.newestEditions();
        model.addAttribute("shelves", shelves);
        model.addAttribute("editions", editions);
        model.addAttribute("zone", ZoneOffset.UTC);
        return "checklists/list";
    }

    private static Shelf shelf(@Nullable PumpKind kind, List<Checklist> all) {
        return new Shelf(
                kind,
                all.stream()
                        .filter(each -> each.pumpKind() == kind)
                        .sorted(Comparator.comparing(Checklist::phase))
                        .toList());
    }

    @GetMapping("/checklists/{id}")
    String newest(@PathVariable long id, Model model, Person me) {
        return page(checklists.checklist(id), model, me);
    }

    @GetMapping("/checklists/{id}/versions/{n}")
    String version(@PathVariable long id, @PathVariable int n, Model model, Person me) {
        return page(checklists.version(id, n), model, me);
    }

    private String page(Checklist checklist, Model model, Person me) {
        List<Edition> editions = checklists.editions(checklist.id());
        model.addAttribute("checklist", checklist);
        model.addAttribute("rows", rows(checklist, me));
        model.addAttribute("editions", editions);
        model.addAttribute("newest", editions.get(0).number());
        model.addAttribute("zone", ZoneOffset.UTC);
        if (checklist.number() > 1) {
            model.addAttribute(
                    "changes",
                    ChangeRow.rows(
                            checklists.version(checklist.id(), checklist.number() - 1),
                            checklist,
                            LimitWords.of(messages, me)));
        }
        return "checklists/checklist";
    }

    @GetMapping("/checklists/{id}/print")
    String print(@PathVariable long id, Model model, Person me) {
        Checklist checklist = checklists.checklist(id);
        model.addAttribute("checklist", checklist);
        model.addAttribute("rows", rows(checklist, me));
        return "checklists/print";
    }

    private List<Row> rows(Checklist checklist, Person me) {
        List<Row> rows = new ArrayList<>();
        String section = "";
        for (CheckLine line : checklist.lines()) {
            rows.add(new Row(
                    line,
                    line.section().equals(section) ? null : line.section(),
                    line.caution() == null ? List.of() : line.caution().lines().toList(),
                    line.limitsInWords(Ratings.NONE, LimitWords.of(messages, me)),
                    line.unitFor(me.unitSystem())));
            section = line.section();
        }
        return rows;
    }
}
