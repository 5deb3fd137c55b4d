package freshet.places;

import freshet.people.Difference;
import freshet.people.FormAnswer;
import freshet.people.Person;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
import java.util.Objects;
import org.springframework.security.access.prepost.PreAuthorize;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The pages of a customer. */
@Controller
class CustomerController {

    private final Places places;

    CustomerController(Places places) {
        this.places = places;
    }

    @ModelAttribute("way")
    String way() {
        return "places";
    }

    @GetMapping("/places/customers/{id}")
    String customer(@PathVariable long id, Model model) {
        model.addAttribute("customer", places.customer(id));
        model.addAttribute(
                "sites",
                places.sites().stream()
                        .filter(site -> Objects.equals(site.customerId(), id))
                        .toList());
        return "places/customer";
    }

    @GetMapping("/places/customers/new")
    @PreAuthorize("hasRole('OWNER')")
    String blank(Model model) {
        model.addAttribute("form", new CustomerForm(null, null, null, null));
        return "places/customer-form";
    }

    @PostMapping("/places/customers/new")
    @PreAuthorize("hasRole('OWNER')")
    String add(
            @ModelAttribute("form") CustomerForm form,
            BindingResult errors,
            Model model,
            Person me,
            HttpServletResponse response,
            RedirectAttributes flash) {
        return FormAnswer.of(
                errors,
                model,
                response,
                () -> saved(places.addCustomer(form.draft(), me), flash),
                () -> "places/customer-form");
    }

    @GetMapping("/places/customers/{id}/edit")
    @PreAuthorize("hasRole('OWNER')")
    String edit(@PathVariable long id, Model model) {
        Customer customer = places.customer(id);
        model.addAttribute("customer", customer);
        model.addAttribute("form", CustomerForm.of(customer));
        return "places/customer-form";
    }

    @PostMapping("/places/customers/{id}/edit")
    @PreAuthorize("hasRole('OWNER')")
    String change(
            @PathVariable long id,
            @ModelAttribute("form") CustomerForm form,
            BindingResult errors,
            Model model,
            Person me,
            HttpServletResponse response,
            RedirectAttributes flash) {
        return FormAnswer.of(
                errors,
                model,
                response,
                () -> {
                    int version = Objects.requireNonNullElse(form.version(), -1);
                    return saved(places.changeCustomer(id, version, form.draft(), me), flash);
                },
                () -> {
                    Customer now = places.customer(id);
                    model.addAttribute("customer", now);
                    if (model.containsAttribute("stale")) {
                        model.addAttribute(
                                "standsNow",
                                Difference.between("places.customer", form, CustomerForm.of(now), Map.of()));
                    }
                    return "places/customer-form";
                });
    }

    private static String saved(Customer customer, RedirectAttributes flash) {
        flash.addFlashAttribute("done", "places.saved");
        return "redirect:/places/customers/" + customer.id();
    }
}
