package freshet.wear;

import freshet.measures.Show;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.pumps.Unit;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Locale;
import org.springframework.context.MessageSource;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BeanPropertyBindingResult;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;

/** The page of one unit's wear: its line against run hours, and when it may come to the threshold. */
@Controller
class WearController {

    private final Wear wear;
    private final MessageSource messages;

    WearController(Wear wear, MessageSource messages) {
        this.wear = wear;
        this.messages = messages;
    }

    @GetMapping("/pumps/{id}/wear")
    String unit(
            @PathVariable long id,
            WearForm typed,
            @ModelAttribute("show") Show show,
            Person me,
            Model model,
            Locale locale,
            HttpServletResponse response) {
        WearForm form = typed.filled();
        BindingResult errors = new BeanPropertyBindingResult(form, "form");
        WearQuestion asked = WearQuestion.USUAL;
        try {
            asked = form.question(me);
        } catch (Refused refused) {
            refused.into(errors);
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        }
        UnitWear found = wear.unit(id, asked);
        Unit unit = found.unit();
        model.addAttribute("way", "pumps");
        model.addAttribute("form", form);
        model.addAttribute(BindingResult.MODEL_KEY_PREFIX + "form", errors);
        model.addAttribute("unit", unit);
        model.addAttribute("zone", unit.stand().zone());
        model.addAttribute("wear", found);
        model.addAttribute(
                "sheet",
                WearSheet.of(
                        found,
                        new WearSheet.Words(
                                show.percent(asked.threshold()),
                                messages.getMessage("wear.sheet.now", null, locale),
                                messages.getMessage("wear.sheet.repaired", null, locale))));
        return "wear/unit";
    }
}
