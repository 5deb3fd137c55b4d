package freshet.phrases;

import java.util.Locale;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ModelAttribute;

/** Gives each page what says stored texts in its reader's language. */
@ControllerAdvice(annotations = Controller.class)
class SaidOnEveryPage {

    @ModelAttribute("phrases")
    Said said(Locale locale) {
        return new Said(locale);
    }
}
