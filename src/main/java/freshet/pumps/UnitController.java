package freshet.pumps;

import freshet.people.Difference;
import freshet.people.FormAnswer;
import freshet.people.Person;
import freshet.people.Typed;
import freshet.places.Places;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
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
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The pages on which a unit is registered, changed or moved. */
@Controller
@PreAuthorize("hasRole('OWNER')")
class UnitController {

    private final Pumps pumps;
    private final Places places;
    private final Clock clock;

    UnitController(Pumps pumps, Places places, Clock clock) {
        this.pumps = pumps;
        this.places = places;
        this.clock = clock;
    }

    @ModelAttribute("way")
    String way() {
        return "pumps";
    }

    @GetMapping("/pumps/new")
    String blank(@RequestParam(required = false) @Nullable Long model, Model page) {
        ZoneId zone =
                places.sites().stream().findFirst().map(site -> site.zone()).orElse(ZoneId.systemDefault());
        page.addAttribute("form", UnitForm.blank(model, LocalDate.ofInstant(clock.instant(), zone)));
        return form(page, null);
    }

    @PostMapping("/pumps/new")
    String register(
            @ModelAttribute("form") UnitForm form,
            BindingResult errors,
            Model page,
            Person me,
            HttpServletResponse response,
            RedirectAttributes flash) {
        return FormAnswer.of(
                errors,
                page,
                response,
                () -> {
                    UnitForm.Read read = form.read(Directory.of(places), true, me);
                    return saved(pumps.register(read.unit(), Objects.requireNonNull(read.at()), me), flash);
                },
                () -> form(page, null));
    }

    @GetMapping("/pumps/{id}/edit")
    String edit(@PathVariable long id, Model page) {
        Unit unit = pumps.unit(id);
        page.addAttribute("form", UnitForm.of(unit));
        return form(page, unit);
    }

    @PostMapping("/pumps/{id}/edit")
    String change(
            @PathVariable long id,
            @ModelAttribute("form") UnitForm form,
            BindingResult errors,
            Model page,
            Person me,
            HttpServletResponse response,
            RedirectAttributes flash) {
        Unit stands = pumps.unit(id);
        return FormAnswer.of(
                errors,
                page,
                response,
                () -> {
                    UnitDraft draft = form.read(Directory.of(places), false, me).unit();
                    int version = Objects.requireNonNullElse(form.version(), -1);
                    return saved(pumps.changeUnit(id, version, draft, me), flash);
                },
                () -> {
                    if (page.containsAttribute("stale")) {
                        Map<String, String> words =
                                Map.of("modelId", stands.model().name());
                        page.addAttribute(
                                "standsNow", Difference.between("pumps.unit", form, UnitForm.of(stands), words));
                    }
                    return form(page, stands);
                });
    }

    private String form(Model page, @Nullable Unit unit) {
        Directory directory = Directory.of(places);
        page.addAttribute("unit", unit);
        page.addAttribute("models", pumps.models());
        page.addAttribute("placeNames", directory.placeNames());
        page.addAttribute("customerNames", directory.customerNames());
        return "pumps/unit-form";
    }

    @GetMapping("/pumps/{id}/move")
    String leave(@PathVariable long id, Model page) {
        page.addAttribute("form", new MoveForm(null, null, null, null));
        return moveForm(page, id);
    }

    @PostMapping("/pumps/{id}/move")
    String move(
            @PathVariable long id,
            @ModelAttribute("form") MoveForm form,
            BindingResult errors,
            Model page,
            Person me,
            HttpServletResponse response,
            RedirectAttributes flash) {
        return FormAnswer.of(
                errors,
                page,
                response,
                () -> {
                    Typed typed = new Typed(me);
                    Whereabouts to = Directory.of(places).whereabouts("place", form.place(), form.spot(), typed);
                    ZoneId zone = to == null
                            ? pumps.unit(id).stand().zone()
                            : places.site(to.siteId()).zone();
                    Instant since = form.moment(zone, clock.instant(), typed);
                    typed.refuseIfWrong();
                    return saved(
                            pumps.move(
                                    id,
                                    Objects.requireNonNull(to),
                                    Objects.requireNonNull(since),
                                    Typed.text(form.note()),
                                    me),
                            flash);
                },
                () -> moveForm(page, id));
    }

    private String moveForm(Model page, long id) {
        page.addAttribute("unit", pumps.unit(id));
        List<Stand> stands = pumps.stands(id);
        page.addAttribute("stands", stands);
        page.addAttribute("placeNames", Directory.of(places).placeNames());
        return "pumps/move";
    }

    private static String saved(Unit unit, RedirectAttributes flash) {
        flash.addFlashAttribute("done", "pumps.saved");
        return "redirect:/pumps/" + unit.id();
    }
}
