package freshet.timetable;

import freshet.people.Person;
import org.springframework.security.access.prepost.PreAuthorize;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The owner's page of what runs by itself. */
@Controller
@PreAuthorize("hasRole('OWNER')")
class TimetableController {

    private final Timetable timetable;

    TimetableController(Timetable timetable) {
        this.timetable = timetable;
    }

    @GetMapping("/timetable")
    String timetable(Model model) {
        model.addAttribute("lines", timetable.lines());
        return "timetable/timetable";
    }

    @PostMapping("/timetable/{room}/{name}")
    String runNow(
            @PathVariable String room,
            @PathVariable String name,
            @RequestParam(defaultValue = "") String zone,
            Person me,
            RedirectAttributes flash) {
        timetable.runNow(room, name, zone, me);
        flash.addFlashAttribute("done", "timetable.asked");
        return "redirect:/timetable";
    }
}
