package freshet.help;

import jakarta.servlet.http.HttpServletRequest;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ModelAttribute;

/** Tells each page where its help stands. */
@ControllerAdvice(annotations = Controller.class)
class HelpOnEveryPage {

    @ModelAttribute("help")
    @Nullable
    String help(HttpServletRequest request) {
        String path = request.getRequestURI().substring(request.getContextPath().length());
        return Topic.of(path).map(Topic::word).orElse(null);
    }
}
