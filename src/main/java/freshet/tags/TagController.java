package freshet.tags;

import freshet.people.Typed;
import freshet.pumps.Unit;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The ways from a tag to its unit: scanned from its label, seen by the camera on the scan page, or typed. */
@Controller
class TagController {

    private final Tags tags;
    private final PrintedAddress address;

    TagController(Tags tags, PrintedAddress address) {
        this.tags = tags;
        this.address = address;
    }

    @ModelAttribute("way")
    String way() {
        return "pumps";
    }

    @GetMapping("/scan")
    String scan(Model model, HttpServletRequest request) {
        model.addAttribute("base", address.base(request));
        return "tags/scan";
    }

    /** What the code on a label opens; {@code ?do=read} goes straight to the meter. */
    @GetMapping("/t/{tag}")
    String open(
            @PathVariable String tag,
            @RequestParam(name = "do", required = false) @Nullable String doing,
            Model model,
            HttpServletResponse response) {
        Looked looked = tags.look(tag);
        Unit unit = looked.unit();
        if (unit == null) {
            return notFound(looked, model, response);
        }
        boolean read = "read".equals(doing) && !unit.retired();
        return "redirect:/pumps/" + unit.id() + (read ? "/reading" : "");
    }

    /** A tag typed, with its check character or without: straight to its unit, else to what it may have meant. */
    @GetMapping("/find")
    String find(
            @RequestParam(defaultValue = "") String tag,
            Model model,
            HttpServletResponse response,
            RedirectAttributes to) {
        Looked looked = tags.look(tag);
        if (looked.unit() != null) {
            return "redirect:/pumps/" + looked.unit().id();
        }
        String words = Typed.textOrEmpty(tag);
        boolean nothingHasIt = looked.mistyped() || !words.isEmpty() && !tags.somethingHas(words);
        if (nothingHasIt && !looked.near().isEmpty()) {
            return notFound(looked, model, response);
        }
        to.addAttribute("text", words);
        return "redirect:/pumps";
    }

    private static String notFound(Looked looked, Model model, HttpServletResponse response) {
        response.setStatus(looked.mistyped() ? HttpStatus.UNPROCESSABLE_CONTENT.value() : HttpStatus.NOT_FOUND.value());
        model.addAttribute("looked", looked);
        return "tags/not-found";
    }
}
