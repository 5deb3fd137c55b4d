package freshet.people;

import jakarta.servlet.http.HttpServletResponse;
import org.springframework.security.access.prepost.PreAuthorize;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;

/** The owner's list of people: who may sign in, and what each is competent for. */
@Controller
@PreAuthorize("hasRole('OWNER')")
class PeopleController {

    private final People people;

    PeopleController(People people) {
        this.people = people;
    }

    @GetMapping("/people")
    String list(Model model) {
        model.addAttribute("everyone", people.everyone());
        return "people/list";
    }

    @GetMapping("/people/new")
    String blank(Model model) {
        model.addAttribute("form", PersonForm.blank(Language.EN));
        return "people/person";
    }

    @PostMapping("/people/new")
    String add(
            @ModelAttribute("form") PersonForm form,
            BindingResult errors,
            Model model,
            Person me,
            HttpServletResponse response) {
        return FormAnswer.of(
                errors,
                model,
                response,
                () -> {
                    people.addPerson(
                            form.text(form.signInName()),
                            form.text(form.fullName()),
                            form.secret(),
                            form.chosenRole(),
                            form.chosenCompetences(),
                            me);
                    return "redirect:/people";
                },
                () -> "people/person");
    }

    @GetMapping("/people/{id}")
    String edit(@PathVariable long id, Model model) {
        Person person = people.person(id);
        model.addAttribute("person", person);
        model.addAttribute("form", PersonForm.of(person));
        return "people/person";
    }

    @PostMapping("/people/{id}")
    String change(
            @PathVariable long id,
            @ModelAttribute("form") PersonForm form,
            BindingResult errors,
            Model model,
            Person me,
            HttpServletResponse response) {
        return FormAnswer.of(
                errors,
                model,
                response,
                () -> {
                    people.changePerson(
                            id,
                            form.version() == null ? -1 : form.version(),
                            form.text(form.fullName()),
                            form.chosenRole(),
                            form.chosenCompetences(),
                            Boolean.TRUE.equals(form.active()),
                            form.secret().isEmpty() ? null : form.secret(),
                            me);
                    return "redirect:/people";
                },
                () -> {
                    model.addAttribute("person", people.person(id));
                    return "people/person";
                });
    }
}
