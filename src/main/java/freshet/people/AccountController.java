package freshet.people;

import freshet.measures.UnitSystem;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** One's own account: units, password, and tokens for programs. */
@Controller
class AccountController {

    private final People people;

    AccountController(People people) {
        this.people = people;
    }

    record PasswordForm(@Nullable String current, @Nullable String next) {}

    record TokenForm(@Nullable String label) {}

    @GetMapping("/account")
    String account(Model model, Person me) {
        model.addAttribute("password", new PasswordForm(null, null));
        model.addAttribute("token", new TokenForm(null));
        return page(model, me);
    }

    private String page(Model model, Person me) {
        model.addAttribute("tokens", people.tokens(me.id()));
        return "people/account";
    }

    @PostMapping("/account/units")
    String units(
            @RequestParam UnitSystem unitSystem,
            @RequestParam(required = false) @Nullable Language language,
            Person me,
            RedirectAttributes flash) {
        people.readIn(me.id(), unitSystem);
        if (language != null) {
            people.readIn(me.id(), language);
        }
        flash.addFlashAttribute("done", "people.units.done");
        return "redirect:/account";
    }

    @PostMapping("/account/password")
    String password(
            @ModelAttribute("password") PasswordForm form,
            BindingResult errors,
            Model model,
            Person me,
            RedirectAttributes flash,
            HttpServletResponse response) {
        return FormAnswer.of(
                errors,
                model,
                response,
                () -> {
                    people.changePassword(me.id(), typed(form.current()), typed(form.next()));
                    flash.addFlashAttribute("done", "people.password.done");
                    return "redirect:/account";
                },
                () -> {
                    model.addAttribute("token", new TokenForm(null));
                    return page(model, me);
                });
    }

    @PostMapping("/account/tokens")
    String issue(
            @ModelAttribute("token") TokenForm form,
            BindingResult errors,
            Model model,
            Person me,
            RedirectAttributes flash,
            HttpServletResponse response) {
        return FormAnswer.of(
                errors,
                model,
                response,
                () -> {
                    flash.addFlashAttribute("issued", people.issueToken(me.id(), typed(form.label())));
                    return "redirect:/account";
                },
                () -> {
                    model.addAttribute("password", new PasswordForm(null, null));
                    return page(model, me);
                });
    }

    private static String typed(@Nullable String text) {
        return text == null ? "" : text;
    }

    @PostMapping("/account/tokens/{id}/revoke")
    String revoke(@PathVariable long id, Person me) {
        people.revokeToken(me.id(), id);
        return "redirect:/account";
    }
}
