package freshet.people;

import freshet.measures.UnitSystem;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Locale;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;

/** The sign-in page, and the first page of an empty install, which makes the owner's account. */
@Controller
class SignInController {

    private final People people;

    SignInController(People people) {
        this.people = people;
    }

    @GetMapping("/sign-in")
    String signIn() {
        return "people/sign-in";
    }

    @GetMapping("/welcome")
    String welcome(Model model, Locale locale) {
        if (people.anyone()) {
            return "redirect:/";
        }
        model.addAttribute("form", PersonForm.blank(Language.of(locale)));
        return "people/welcome";
    }

    @PostMapping("/welcome")
    String welcome(
            @ModelAttribute("form") PersonForm form, BindingResult errors, Model model, HttpServletResponse response) {
        return FormAnswer.of(
                errors,
                model,
                response,
                () -> {
                    Person owner = people.welcomeFirstOwner(
                            form.text(form.signInName()),
                            form.text(form.fullName()),
                            form.secret(),
                            form.unitSystem() == null ? UnitSystem.US : form.unitSystem());
                    people.readIn(owner.id(), form.language() == null ? Language.EN : form.language());
                    return "redirect:/sign-in?made";
                },
                () -> "people/welcome");
    }
}
