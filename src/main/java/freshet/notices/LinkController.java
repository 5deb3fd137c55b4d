package freshet.notices;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;

/**
 * The links in mail, which work without signing in: yes to an address, and no more mail of a kind. Opening one changes nothing, for
 * programs that look mail through open links too; pressing its button does.
 */
@Controller
class LinkController {

    private final Notices notices;

    LinkController(Notices notices) {
        this.notices = notices;
    }

    @GetMapping("/notices/confirm/{secret}")
    String question(@PathVariable String secret, Model model) {
        model.addAttribute("address", notices.asked(secret).askedAddress());
        model.addAttribute("secret", secret);
        return "notices/confirm";
    }

    @PostMapping("/notices/confirm/{secret}")
    String yes(@PathVariable String secret, Model model) {
        model.addAttribute("address", notices.confirm(secret).address());
        model.addAttribute("confirmed", true);
        return "notices/confirm";
    }

    @GetMapping("/notices/stop/{secret}")
    String stop(@PathVariable String secret, Model model) {
        model.addAttribute("mail", notices.mailStoppedBy(secret));
        model.addAttribute("secret", secret);
        return "notices/stop";
    }

    /** Pressed by a person, or by a mail program on a person's behalf (RFC 8058). */
    @PostMapping("/notices/stop/{secret}")
    String stopped(@PathVariable String secret, Model model) {
        model.addAttribute("mail", notices.stop(secret));
        model.addAttribute("stopped", true);
        return "notices/stop";
    }
}
