package freshet.tags;

import freshet.measures.UnitSystem;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.places.Places;
import freshet.pumps.PumpKind;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;

/** The page on which labels are chosen, and the sheets that are printed; both only read, so both are plain addresses. */
@Controller
class LabelController {

    private final Tags tags;
    private final Places places;
    private final PrintedAddress address;

    LabelController(Tags tags, Places places, PrintedAddress address) {
        this.tags = tags;
        this.places = places;
        this.address = address;
    }

    @ModelAttribute("way")
    String way() {
        return "pumps";
    }

    @GetMapping("/labels")
    String choose(
            @ModelAttribute("form") LabelForm form,
            BindingResult errors,
            Model model,
            Person me,
            HttpServletRequest request) {
        String base = address.base(request);
        model.addAttribute("base", base);
        model.addAttribute("onlyHere", PrintedAddress.onlyThisMachine(base));
        model.addAttribute("listed", form.typedTags().size());
        model.addAttribute("found", tags.found(form.query()));
        model.addAttribute("chosen", form.sheet(usual(me)));
        model.addAttribute("kinds", PumpKind.values());
        model.addAttribute("sites", places.sites());
        model.addAttribute("customers", places.customers());
        return "tags/labels";
    }

    @GetMapping("/labels/print")
    String print(
            @ModelAttribute("form") LabelForm form,
            BindingResult errors,
            Model model,
            Person me,
            HttpServletRequest request,
            HttpServletResponse response) {
        LabelSheet sheet = form.sheet(usual(me));
        Integer start = form.startOn(sheet);
        if (start == null) {
            Refused.because("start", "tags.labels.start", sheet.places()).into(errors);
        }
        try {
            List<String> typed = form.typedTags();
            String base = address.base(request);
            List<Label> labels = typed.isEmpty() ? tags.labels(form.query(), base) : tags.labels(typed, base);
            if (start != null) {
                model.addAttribute("sheet", sheet);
                model.addAttribute("count", labels.size());
                model.addAttribute("leaves", Leaf.lay(labels, start, sheet.places()));
                model.addAttribute("query", request.getQueryString());
                return "tags/print";
            }
        } catch (Refused refused) {
            refused.into(errors);
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return choose(form, errors, model, me, request);
    }

    private static LabelSheet usual(Person me) {
        return me.unitSystem() == UnitSystem.US ? LabelSheet.LETTER_24 : LabelSheet.A4_24;
    }
}
