package freshet.places;

import freshet.people.Difference;
import freshet.people.FormAnswer;
import freshet.people.Person;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.time.Month;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.springframework.security.access.prepost.PreAuthorize;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The list of places, and the pages of a site. */
@Controller
class PlacesController {

    private final Places places;
    private final Clock clock;

    PlacesController(Places places, Clock clock) {
        this.places = places;
        this.clock = clock;
    }

    @ModelAttribute("way")
    String way() {
        return "places";
    }

    /** The sites of one owner; {@code customer} is null for our own. */
    record Group(@Nullable Customer customer, List<Site> sites) {}

    @GetMapping("/places")
    String list(Model model) {
        Map<Long, List<Site>> byCustomer = new LinkedHashMap<>();
        for (Site site : places.sites()) {
            byCustomer
                    .computeIfAbsent(Objects.requireNonNullElse(site.customerId(), 0L), id -> new ArrayList<>())
                    .add(site);
        }
        List<Group> groups = new ArrayList<>();
        if (byCustomer.containsKey(0L)) {
            groups.add(new Group(null, byCustomer.get(0L)));
        }
        for (Customer customer : places.customers()) {
            groups.add(new Group(customer, byCustomer.getOrDefault(customer.id(), List.of())));
        }
        model.addAttribute("groups", groups);
        return "places/list";
    }

    @GetMapping("/places/sites/{id}")
    String site(@PathVariable long id, Model model) {
        Site site = places.site(id);
        model.addAttribute("site", site);
        model.addAttribute("positions", places.positions(id));
        model.addAttribute("spans", SpanRow.around(site, site.today(clock)));
        return "places/site";
    }

    @GetMapping("/places/sites/new")
    @PreAuthorize("hasRole('OWNER')")
    String blank(Model model) {
        List<Site> others = places.sites();
        ZoneId usual = others.isEmpty() ? ZoneId.systemDefault() : others.get(0).zone();
        model.addAttribute("form", SiteForm.blank(usual));
        return form(model);
    }

    @PostMapping("/places/sites/new")
    @PreAuthorize("hasRole('OWNER')")
    String add(
            @ModelAttribute("form") SiteForm form,
            BindingResult errors,
            Model model,
            Person me,
            HttpServletResponse response,
            RedirectAttributes flash) {
        if (errors.getTarget() != null && form.more() != null) {
            return form(model);
        }
        return FormAnswer.of(
                errors, model, response, () -> saved(places.addSite(form.draft(), me), flash), () -> form(model));
    }

    @GetMapping("/places/sites/{id}/edit")
    @PreAuthorize("hasRole('OWNER')")
    String edit(@PathVariable long id, Model model) {
        Site site = places.site(id);
        model.addAttribute("form", SiteForm.of(site));
        return form(model, site, null);
    }

    @PostMapping("/places/sites/{id}/edit")
    @PreAuthorize("hasRole('OWNER')")
    String change(
            @PathVariable long id,
            @ModelAttribute("form") SiteForm form,
            BindingResult errors,
            Model model,
            Person me,
            HttpServletResponse response,
            RedirectAttributes flash) {
        if (errors.getTarget() != null && form.more() != null) {
            return form(model, places.site(id), form);
        }
        return FormAnswer.of(
                errors,
                model,
                response,
                () -> {
                    int version = Objects.requireNonNullElse(form.version(), -1);
                    return saved(places.changeSite(id, version, form.draft(), me), flash);
                },
                () -> form(model, places.site(id), form));
    }

    private String saved(Site site, RedirectAttributes flash) {
        flash.addFlashAttribute("done", "places.saved");
        return "redirect:/places/sites/" + site.id();
    }

    private String form(Model model, Site site, @Nullable SiteForm typed) {
        model.addAttribute("site", site);
        if (typed != null && model.containsAttribute("stale")) {
            String owner = Objects.requireNonNullElse(site.customerName(), "");
            model.addAttribute(
                    "standsNow",
                    Difference.between("places.site", typed, SiteForm.of(site), Map.of("customerId", owner)));
        }
        return form(model);
    }

    private String form(Model model) {
        model.addAttribute("zones", Zones.offered());
        model.addAttribute("kinds", WindowKind.values());
        model.addAttribute("months", Month.values());
        model.addAttribute("customers", places.customers());
        return "places/site-form";
    }
}
