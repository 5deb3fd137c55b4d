package freshet.notices;

import freshet.people.FormAnswer;
import freshet.people.Person;
import freshet.people.Typed;
import freshet.places.Places;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.time.DayOfWeek;
import java.util.List;
import java.util.stream.IntStream;
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

/** One's own mail and calendars: the address, which mail and when, and secret calendar addresses. */
@Controller
class ChoicesController {

    private static final String PAGE = "notices/choices";
    private static final String TO_PAGE = "redirect:/notices";

    private final Notices notices;
    private final Places places;
    private final OwnAddress own;

    ChoicesController(Notices notices, Places places, OwnAddress own) {
        this.notices = notices;
        this.places = places;
        this.own = own;
    }

    record AddressForm(@Nullable String address) {}

    @GetMapping("/notices")
    String choices(Model model, Person me) {
        model.addAttribute("form", ChoicesForm.of(notices.choices(me.id())));
        return withAddress(model, me);
    }

    private String withAddress(Model model, Person me) {
        model.addAttribute("addressForm", new AddressForm(null));
        return page(model, me);
    }

    private String page(Model model, Person me) {
        model.addAttribute("choices", notices.choices(me.id()));
        model.addAttribute("mailbag", notices.mailbag(me));
        model.addAttribute("calendars", notices.calendars(me.id()));
        model.addAttribute("sites", places.sites());
        model.addAttribute("hours", IntStream.range(0, 24).boxed().toList());
        model.addAttribute("weekdays", List.of(DayOfWeek.values()));
        return PAGE;
    }

    @PostMapping("/notices")
    String choose(
            @ModelAttribute("form") ChoicesForm form,
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
                    ChoicesDraft draft = form.draft(new Typed(me), notices.choices(me.id()), me.owner());
                    notices.choose(me, form.version() == null ? -1 : form.version(), draft);
                    flash.addFlashAttribute("done", "notices.chosen");
                    return TO_PAGE;
                },
                () -> withAddress(model, me));
    }

    @PostMapping("/notices/address")
    String ask(
            @ModelAttribute("addressForm") AddressForm form,
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
                    notices.askAddress(me, Typed.textOrEmpty(form.address()));
                    flash.addFlashAttribute("done", "notices.address.asked");
                    return TO_PAGE;
                },
                () -> {
                    model.addAttribute("form", ChoicesForm.of(notices.choices(me.id())));
                    return page(model, me);
                });
    }

    @PostMapping("/notices/address/forget")
    String forget(Person me, RedirectAttributes flash) {
        notices.forgetAddresses(me);
        flash.addFlashAttribute("done", "notices.address.forgotten");
        return TO_PAGE;
    }

    @PostMapping("/notices/calendars")
    String makeCalendar(@RequestParam long siteId, Person me, HttpServletRequest request, RedirectAttributes flash) {
        String secret = notices.makeCalendar(me, siteId);
        flash.addFlashAttribute("madeFor", places.site(siteId).name());
        flash.addFlashAttribute("made", own.seenFrom(request) + "/calendar/" + secret + ".ics");
        return TO_PAGE + "#calendars";
    }

    @PostMapping("/notices/calendars/{siteId}/take-back")
    String takeBackCalendar(@PathVariable long siteId, Person me, RedirectAttributes flash) {
        notices.takeBackCalendar(me, siteId);
        flash.addFlashAttribute("done", "notices.calendar.takenBack");
        return TO_PAGE;
    }
}
