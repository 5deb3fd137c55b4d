package freshet.happenings;

import freshet.happenings.HappeningForm.Place;
import freshet.people.FormAnswer;
import freshet.people.Person;
import freshet.people.Typed;
import freshet.places.Places;
import freshet.places.Position;
import freshet.places.Site;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
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

/** The pages on which somebody reports what happened, looks back at it, and takes a wrong report back. */
@Controller
class HappeningController {

    private static final int ROWS = 30;
    /** So many places are offered at once; more are found by a word of their name, or meant all together. */
    private static final int MOST_PLACES = 60;

    private final Happenings happenings;
    private final Places places;
    private final Pumps pumps;
    private final Clock clock;

    HappeningController(Happenings happenings, Places places, Pumps pumps, Clock clock) {
        this.happenings = happenings;
        this.places = places;
        this.pumps = pumps;
        this.clock = clock;
    }

    @ModelAttribute("way")
    String way() {
        return "today";
    }

    /** What a report may be about, as the page names it. */
    record Offer(Place place, String name, @Nullable String of) {}

    @GetMapping("/happenings")
    String list(@RequestParam(defaultValue = "1") String page, Model model) {
        int total = happenings.count(null, true);
        int pages = Math.max(1, (total + ROWS - 1) / ROWS);
        int at = page.matches("\\d{1,6}") ? Math.min(Math.max(Integer.parseInt(page), 1), pages) : 1;
        model.addAttribute("found", happenings.recent(null, true, at - 1, ROWS));
        model.addAttribute("page", at);
        model.addAttribute("pages", pages);
        return "happenings/list";
    }

    @GetMapping("/happenings/new")
    String blank(
            @RequestParam @Nullable String kind,
            @RequestParam @Nullable String site,
            @RequestParam @Nullable String unit,
            @RequestParam @Nullable String find,
            Model model) {
        String first = id(unit) != null ? "unit:" + unit : id(site) != null ? "site:" + site : null;
        HappeningForm form = HappeningForm.blank(kind, site, unit, find, first == null ? List.of() : List.of(first));
        model.addAttribute("form", form);
        return reportPage(form, model);
    }

    private String reportPage(HappeningForm form, Model model) {
        List<Offer> offers = offers(form);
        model.addAttribute("kinds", HappeningKind.allByHand());
        model.addAttribute("offers", offers.stream().limit(MOST_PLACES).toList());
        model.addAttribute("more", Math.max(0, offers.size() - MOST_PLACES));
        model.addAttribute("open", id(form.unit()) == null && id(form.site()) == null);
        model.addAttribute("sites", places.sites().size());
        return "happenings/report";
    }

    @PostMapping("/happenings/new")
    String report(
            @ModelAttribute("form") HappeningForm form,
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
                    String tag = Typed.text(form.tag());
                    Unit tagged = tag == null ? null : pumps.unitTagged(tag).orElse(null);
                    List<Place> offered =
                            offers(form).stream().map(Offer::place).toList();
                    List<Place> all = places.sites().stream()
                            .map(HappeningController::whole)
                            .toList();
                    List<Long> ids = happenings.reportAll(form.drafts(offered, all, tagged, me, clock.instant()), me);
                    flash.addFlashAttribute("done", "happenings.reported");
                    return ids.size() == 1 ? "redirect:/happenings/" + ids.get(0) : "redirect:/happenings";
                },
                () -> reportPage(form, model));
    }

    /** A pump with its pit and place, a place with its pits, or the places in which the word is found; what was ticked is among them. */
    private List<Offer> offers(HappeningForm form) {
        List<Offer> offers = new ArrayList<>();
        Long unitId = id(form.unit());
        Long siteId = id(form.site());
        if (unitId != null) {
            Unit unit = pumps.unit(unitId);
            offers.add(new Offer(
                    new Place("unit:" + unitId, null, null, unitId, unit.stand().zone()),
                    unit.tag(),
                    unit.model().name()));
            siteId = unit.stand().siteId();
            Long positionId = unit.stand().positionId();
            Site site = places.site(siteId);
            if (positionId != null) {
                offers.add(in(places.position(positionId), site));
            }
            offers.add(new Offer(whole(site), site.name(), null));
        } else if (siteId != null) {
            Site site = places.site(siteId);
            offers.add(new Offer(whole(site), site.name(), null));
            places.positions(siteId).forEach(position -> offers.add(in(position, site)));
        } else {
            String word = Typed.textOrEmpty(form.find()).toLowerCase(Locale.ROOT);
            places.sites().stream()
                    .filter(site -> form.ticked("site:" + site.id())
                            || site.name().toLowerCase(Locale.ROOT).contains(word))
                    .forEach(site -> offers.add(new Offer(whole(site), site.name(), site.customerName())));
        }
        return offers;
    }

    private static Place whole(Site site) {
        return new Place("site:" + site.id(), site.id(), null, null, site.zone());
    }

    private static Offer in(Position position, Site site) {
        return new Offer(
                new Place("position:" + position.id(), null, position.id(), null, site.zone()),
                position.name(),
                site.name());
    }

    private static @Nullable Long id(@Nullable String text) {
        return text != null && text.matches("\\d{1,18}") ? Long.valueOf(text) : null;
    }

    /** Why a report is taken back. */
    record WhyForm(@Nullable String why) {}

    @GetMapping("/happenings/{id}")
    String happening(@PathVariable long id, Model model) {
        model.addAttribute("form", new WhyForm(null));
        return happeningPage(id, model);
    }

    private String happeningPage(long id, Model model) {
        model.addAttribute("happened", happenings.happening(id));
        model.addAttribute("touched", pumps.units(happenings.touched(id)));
        return "happenings/happening";
    }

    @PostMapping("/happenings/{id}")
    String withdraw(
            @PathVariable long id,
            @ModelAttribute("form") WhyForm form,
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
                    happenings.withdraw(id, Typed.textOrEmpty(form.why()), me);
                    flash.addFlashAttribute("done", "happenings.withdrawn");
                    return "redirect:/happenings/" + id;
                },
                () -> happeningPage(id, model));
    }
}
