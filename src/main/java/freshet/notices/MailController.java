package freshet.notices;

import freshet.people.Person;
import org.springframework.security.access.prepost.PreAuthorize;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** What became of the mail: whether it goes out at all, what waits and why, what was sent. */
@Controller
class MailController {

    private final Notices notices;
    private final OwnAddress own;

    MailController(Notices notices, OwnAddress own) {
        this.notices = notices;
        this.own = own;
    }

    @GetMapping("/notices/mail")
    String mail(Model model, Person me) {
        model.addAttribute("mailbag", notices.mailbag(me));
        model.addAttribute("ownAddress", own.forLinks());
        model.addAttribute("ownAddressKnown", own.known());
        return "notices/mail";
    }

    @PostMapping("/notices/mail/try")
    @PreAuthorize("hasRole('OWNER')")
    String tryNow(RedirectAttributes flash) {
        notices.tryNow();
        flash.addFlashAttribute("done", "notices.mail.trying");
        return "redirect:/notices/mail";
    }
}
