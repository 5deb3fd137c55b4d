package freshet.people;

import jakarta.servlet.http.HttpServletResponse;
import java.util.function.Supplier;
import org.springframework.http.HttpStatus;
import org.springframework.orm.ObjectOptimisticLockingFailureException;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;

/** How a form answers: it redirects once its door took it; else the whole page comes again with what was typed. */
public final class FormAnswer {

    private FormAnswer() {}

    /**
     * Saves and gives the address to go to, or the page again: 422 with each wrong at its field, or 409 with {@code stale} in the
     * model when somebody changed it meanwhile, or 400 for what no browser sends from our page.
     */
    public static String of(
            BindingResult errors,
            Model model,
            HttpServletResponse response,
            Supplier<String> saved,
            Supplier<String> page) {
        if (errors.getTarget() == null) {
            // a choice or a hidden number that the page never offered
            response.setStatus(HttpStatus.BAD_REQUEST.value());
            return "error/4xx";
        }
        try {
            if (!errors.hasErrors()) {
                return saved.get();
            }
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        } catch (Refused refused) {
            refused.into(errors);
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        } catch (Stale | ObjectOptimisticLockingFailureException meanwhile) {
            model.addAttribute("stale", true);
            response.setStatus(HttpStatus.CONFLICT.value());
        }
        return page.get();
    }
}
