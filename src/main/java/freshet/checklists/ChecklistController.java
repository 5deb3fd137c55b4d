package freshet.checklists;

import freshet.people.Person;
import freshet.pumps.Ratings;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;

/** The page of the checklists: every line with its limits, its caution and where it comes from. */
@Controller
class ChecklistController {

    private final Checklists checklists;

    ChecklistController(Checklists checklists) {
        this.checklists = checklists;
    }

    /** A line with its limits in words; those that hang on a plate are given as fractions of its figure. */
    record Row(CheckLine check, @Nullable String limits) {}

    record Section(Checklist checklist, List<Row> rows) {}

    @ModelAttribute("way")
    String way() {
        return "today";
    }

    @GetMapping("/checklists")
    String checklists(Model model, Person me) {
        model.addAttribute(
                "sections",
                checklists.checklists().stream()
                        .map(checklist -> new Section(
                                checklist,
                                checklist.lines().stream()
                                        .map(line -> row(line, me))
                                        .toList()))
                        .toList());
        return "checklists/list";
    }

    private static Row row(CheckLine line, Person me) {
        return new Row(line, line.limitsInWords(me.unitSystem(), Ratings.NONE));
    }
}
