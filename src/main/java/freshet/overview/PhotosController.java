package freshet.overview;

import freshet.findings.Finding;
import freshet.findings.Findings;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.photos.Hung;
import freshet.photos.PhotoWrongs;
import freshet.photos.Photos;
import freshet.photos.SentPhoto;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.time.ZoneId;
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

/** The photos of a pump, and those of a finding: looked at, added, taken down. */
@Controller
class PhotosController {

    private final Photos photos;
    private final Pumps pumps;
    private final Findings findings;

    PhotosController(Photos photos, Pumps pumps, Findings findings) {
        this.photos = photos;
        this.pumps = pumps;
        this.findings = findings;
    }

    record PhotoForm(@Nullable String caption) {}

    /** What the photos hang on: its name in the trail, its page, the key of its heading, the pump it is about and the clock there. */
    record Wall(String subject, String page, String heading, String tag, ZoneId zone) {}

    /** A photo, and whether this person may take it down. */
    record Row(Hung photo, boolean mine) {}

    @ModelAttribute("way")
    String way() {
        return "pumps";
    }

    private Wall ofPump(long id) {
        Unit unit = pumps.unit(id);
        return new Wall(
                "unit:" + id,
                "/pumps/" + id,
                "overview.photos.pump",
                unit.tag(),
                unit.stand().zone());
    }

    private Wall ofFinding(long id) {
        Finding finding = findings.finding(id);
        return new Wall("finding:" + id, "/findings/" + id, "overview.photos.finding", finding.tag(), finding.zone());
    }

    @GetMapping("/pumps/{id}/photos")
    String pump(@PathVariable long id, Model model, Person me) {
        return page(ofPump(id), new PhotoForm(null), model, me);
    }

    @GetMapping("/findings/{id}/photos")
    String finding(@PathVariable long id, Model model, Person me) {
        return page(ofFinding(id), new PhotoForm(null), model, me);
    }

    private String page(Wall wall, PhotoForm form, Model model, Person me) {
        List<Row> rows = photos.on(wall.subject()).stream()
                .map(hung -> new Row(hung, Photos.mayTakeDown(hung, me)))
                .toList();
        model.addAttribute("wall", wall);
        model.addAttribute("rows", rows);
        model.addAttribute("form", form);
        return "overview/photos";
    }

    @PostMapping("/pumps/{id}/photos")
    String addToPump(
            @PathVariable long id,
            @ModelAttribute("form") PhotoForm form,
            BindingResult errors,
            Model model,
            Person me,
            RedirectAttributes flash,
            HttpServletRequest request,
            HttpServletResponse response) {
        return add(ofPump(id), form, errors, model, me, flash, request, response);
    }

    @PostMapping("/findings/{id}/photos")
    String addToFinding(
            @PathVariable long id,
            @ModelAttribute("form") PhotoForm form,
            BindingResult errors,
            Model model,
            Person me,
            RedirectAttributes flash,
            HttpServletRequest request,
            HttpServletResponse response) {
        return add(ofFinding(id), form, errors, model, me, flash, request, response);
    }

    private String add(
            Wall wall,
            PhotoForm form,
            BindingResult errors,
            Model model,
            Person me,
            RedirectAttributes flash,
            HttpServletRequest request,
            HttpServletResponse response) {
        try {
            SentPhoto sent = SentPhoto.at(request, Photos.FIELD);
            if (sent == null) {
                throw Refused.because(Photos.FIELD, "photos.none");
            }
            photos.hang(wall.subject(), sent, form.caption(), me);
        } catch (Refused refused) {
            PhotoWrongs.put(refused, errors, model);
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return page(wall, form, model, me);
        }
        flash.addFlashAttribute("done", "overview.photos.added");
        return "redirect:" + wall.page() + "/photos";
    }

    @PostMapping("/pumps/{id}/photos/{hung}/down")
    String takeDownFromPump(@PathVariable long id, @PathVariable long hung, Person me, RedirectAttributes flash) {
        return takeDown(ofPump(id), hung, me, flash);
    }

    @PostMapping("/findings/{id}/photos/{hung}/down")
    String takeDownFromFinding(@PathVariable long id, @PathVariable long hung, Person me, RedirectAttributes flash) {
        return takeDown(ofFinding(id), hung, me, flash);
    }

    private String takeDown(Wall wall, long hung, Person me, RedirectAttributes flash) {
        photos.takeDown(wall.subject(), hung, me);
        flash.addFlashAttribute("done", "overview.photos.down");
        return "redirect:" + wall.page() + "/photos";
    }
}
