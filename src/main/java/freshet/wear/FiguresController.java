package freshet.wear;

import freshet.people.Person;
import freshet.people.Refused;
import freshet.pumps.Pumps;
import freshet.reliability.OutOfRange;
import freshet.reliability.ReplacementAge;
import freshet.reliability.Spares;
import freshet.reliability.Survival;
import freshet.reliability.WeibullFit;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Locale;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSource;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BeanPropertyBindingResult;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;

/** The page of the fleet's figures, for all units or those of one model, with its three calculators. */
@Controller
class FiguresController {

    private final Wear wear;
    private final Pumps pumps;
    private final MessageSource messages;

    FiguresController(Wear wear, Pumps pumps, MessageSource messages) {
        this.wear = wear;
        this.pumps = pumps;
        this.messages = messages;
    }

    @GetMapping("/fleet-figures")
    String figures(FiguresForm form, Person me, Model page, Locale locale, HttpServletResponse response) {
        BindingResult errors = new BeanPropertyBindingResult(form, "form");
        Long modelId = form.modelId();
        page.addAttribute("way", "pumps");
        page.addAttribute("form", form);
        page.addAttribute(BindingResult.MODEL_KEY_PREFIX + "form", errors);
        page.addAttribute("chosen", modelId == null ? null : pumps.model(modelId));
        page.addAttribute("models", pumps.models());
        Figured figured = wear.figures(modelId).orElse(null);
        page.addAttribute("figured", figured);
        page.addAttribute("figures", figured == null ? null : figured.all());
        WeibullFit fit = null;
        if (figured != null) {
            FleetFigures figures = figured.all();
            fit = figures.lives() == null ? null : figures.lives().weibull();
            page.addAttribute(
                    "survivalSheet",
                    LifeSheets.survival(
                            figures.lives(), say("wear.lives.productLimit", locale), say("wear.lives.law", locale)));
            page.addAttribute("recurrenceSheet", LifeSheets.recurrence(figures.recurrence()));
            page.addAttribute(
                    "steps",
                    figures.lives() == null
                            ? null
                            : LifeSheets.rows(figures.lives().productLimit()));
            page.addAttribute(
                    "rows",
                    figures.recurrence() == null
                            ? null
                            : LifeSheets.rows(figures.recurrence().table()));
        }
        WeibullFit law = fit != null && fit.shape() != null && fit.scaleHours() != null ? fit : null;
        page.addAttribute("law", law);
        FiguresForm.Season season = read(form::season, me, errors);
        page.addAttribute("seasonAsked", season);
        page.addAttribute("survival", season == null || law == null ? null : survival(law, season));
        FiguresForm.Renewal renewal = read(form::renewal, me, errors);
        page.addAttribute("renewalAsked", renewal);
        page.addAttribute("renewal", renewal == null ? null : renewal(renewal, law));
        FiguresForm.Stock stock = read(form::stock, me, errors);
        page.addAttribute("stockAsked", stock);
        page.addAttribute("spares", stock == null ? null : spares(stock));
        if (errors.hasErrors()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        }
        return "wear/figures";
    }

    private String say(String code, Locale locale) {
        return messages.getMessage(code, null, locale);
    }

    private static <T> @Nullable T read(Function<Person, @Nullable T> asked, Person me, BindingResult errors) {
        try {
            return asked.apply(me);
        } catch (Refused refused) {
            refused.into(errors);
            return null;
        }
    }

    private static @Nullable Survival survival(WeibullFit law, FiguresForm.Season season) {
        try {
            return law.shape() == null || law.scaleHours() == null
                    ? null
                    : Survival.of(law.shape(), law.scaleHours(), season.ageHours(), season.seasonHours());
        } catch (OutOfRange noSuchLaw) {
            return null;
        }
    }

    private static @Nullable ReplacementAge renewal(FiguresForm.Renewal asked, @Nullable WeibullFit law) {
        Double shape = asked.shape() == null && law != null ? law.shape() : asked.shape();
        Double scale = asked.scaleHours() == null && law != null ? law.scaleHours() : asked.scaleHours();
        try {
            return shape == null || scale == null
                    ? null
                    : ReplacementAge.of(shape, scale, asked.planned(), asked.failure());
        } catch (OutOfRange noSuchLaw) {
            return null;
        }
    }

    private static @Nullable Spares spares(FiguresForm.Stock asked) {
        try {
            return Spares.forLeadTime(
                    asked.demandPerYear(), asked.leadDays(), asked.peakFactor(), asked.serviceLevel());
        } catch (OutOfRange moreThanAnyShelf) {
            return null;
        }
    }
}
