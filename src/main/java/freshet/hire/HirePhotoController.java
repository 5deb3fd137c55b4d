package freshet.hire;

import freshet.people.Person;
import freshet.people.Refused;
import freshet.photos.Hung;
import freshet.photos.PhotoWrongs;
import freshet.photos.Photos;
import freshet.photos.SentPhoto;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The photos of a hire: the same views out and back, side by side, for a person to compare. */
@Controller
class HirePhotoController {

    private final Hires hires;
    private final Photos photos;

    HirePhotoController(Hires hires, Photos photos) {
        this.hires = hires;
        this.photos = photos;
    }

    /** One view: its photos when it went out and when it was back. */
    record Pair(View view, List<Hung> out, List<Hung> in) {}

    /** The form holds photos only. */
    record PhotoForm() {}

    @ModelAttribute("way")
    String way() {
        return "pumps";
    }

    @GetMapping("/hires/{id}/photos")
    String photos(@PathVariable long id, Model model) {
        model.addAttribute("form", new PhotoForm());
        return page(hires.hire(id), model);
    }

    private String page(Hire hire, Model model) {
        Map<String, List<Hung>> hung = photos
                .on(Stream.of(View.values())
                        .flatMap(view -> Stream.of(subject(hire, "OUT", view), subject(hire, "IN", view)))
                        .toList())
                .stream()
                .collect(Collectors.groupingBy(Hung::subject));
        model.addAttribute("hire", hire);
        model.addAttribute(
                "pairs",
                Stream.of(View.values())
                        .map(view -> new Pair(
                                view,
                                hung.getOrDefault(subject(hire, "OUT", view), List.of()),
                                hung.getOrDefault(subject(hire, "IN", view), List.of())))
                        .toList());
        return "hire/photos";
    }

    private static String subject(Hire hire, String when, View view) {
        return "hire:" + hire.id() + ":" + when + ":" + view;
    }

    /** Photos of a unit that is out are of how it went out; once it is back, they are of how it came back. */
    @PostMapping("/hires/{id}/photos")
    String add(
            @PathVariable long id,
            @ModelAttribute("form") PhotoForm form,
            BindingResult errors,
            Model model,
            Person me,
            RedirectAttributes flash,
            HttpServletRequest request,
            HttpServletResponse response) {
        Hire hire = hires.hire(id);
        List<Refused.Wrong> wrongs = new ArrayList<>();
        int kept = 0;
        for (View view : View.values()) {
            SentPhoto sent = SentPhoto.at(request, Photos.FIELD + "-" + view);
            if (sent != null) {
                try {
                    photos.hang(subject(hire, hire.open() ? "OUT" : "IN", view), sent, null, me);
                    kept++;
                } catch (Refused refused) {
                    wrongs.addAll(refused.wrongs());
                }
            }
        }
        if (wrongs.isEmpty() && kept == 0) {
            wrongs.add(Refused.Wrong.at(Photos.FIELD + "-" + View.FRONT, "photos.none"));
        }
        if (!wrongs.isEmpty()) {
            PhotoWrongs.put(new Refused(wrongs), errors, model);
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return page(hire, model);
        }
        flash.addFlashAttribute("done", "hire.photos.kept");
        return "redirect:/hires/" + id + "/photos";
    }
}
