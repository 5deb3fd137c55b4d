package freshet.people;

import freshet.measures.Show;
import freshet.measures.UnitSystem;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.orm.ObjectOptimisticLockingFailureException;
import org.springframework.ui.Model;
import org.springframework.validation.DataBinder;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.context.request.ServletWebRequest;
import org.springframework.web.context.request.WebRequest;
import org.springframework.web.method.annotation.MethodArgumentTypeMismatchException;
import org.springframework.web.server.ResponseStatusException;

/** What every page knows, who is reading and in which units, and what it answers when something is not there. */
@ControllerAdvice(annotations = org.springframework.stereotype.Controller.class)
class EveryPage {

    private static final Pattern ROW = Pattern.compile("\\[(\\d+)]");
    private static final int ROWS = DataBinder.DEFAULT_AUTO_GROW_COLLECTION_LIMIT;

    private final PersonArgument persons;
    private final Clock clock;
    private final StyleSheet sheet;

    EveryPage(PersonArgument persons, Clock clock, StyleSheet sheet) {
        this.persons = persons;
        this.clock = clock;
        this.sheet = sheet;
    }

    /** Before any form is bound. A row beyond what Spring binds would fail in the binding itself. */
    @ModelAttribute
    void known(Model model, WebRequest request, Locale locale) {
        request.getParameterNames().forEachRemaining(name -> {
            Matcher row = ROW.matcher(name);
            if (row.find() && (row.group(1).length() > 3 || Integer.parseInt(row.group(1)) >= ROWS)) {
                throw new ResponseStatusException(HttpStatus.BAD_REQUEST);
            }
        });
        says(model, request, locale);
        if (request instanceof ServletWebRequest servlet) {
            model.addAttribute("said", Typed.said(servlet.getRequest()));
            if (sheet.isNewTo(servlet.getRequest()) && servlet.getResponse() != null) {
                model.addAttribute("styles", sheet.text());
                servlet.getResponse()
                        .addHeader(
                                HttpHeaders.SET_COOKIE,
                                sheet.given(servlet.getRequest()).toString());
            }
        }
    }

    private void says(Model model, WebRequest request, Locale locale) {
        Person me = persons.signedIn(request);
        if (me != null) {
            model.addAttribute("me", me);
        }
        model.addAttribute("show", show(me, locale));
    }

    private Show show(@Nullable Person me, Locale locale) {
        UnitSystem system = me == null ? UnitSystem.US : me.unitSystem();
        return new Show(system, locale, LocalDate.now(clock));
    }

    @ExceptionHandler({NotFound.class, MethodArgumentTypeMismatchException.class})
    @ResponseStatus(HttpStatus.NOT_FOUND)
    String notFound(Model model, WebRequest request, Locale locale) {
        says(model, request, locale);
        return "error/404";
    }

    @ExceptionHandler(NotAllowed.class)
    @ResponseStatus(HttpStatus.FORBIDDEN)
    String notAllowed(Model model, WebRequest request, Locale locale) {
        says(model, request, locale);
        return "error/403";
    }

    @ExceptionHandler({Stale.class, ObjectOptimisticLockingFailureException.class})
    @ResponseStatus(HttpStatus.CONFLICT)
    String stale(Model model, WebRequest request, Locale locale) {
        says(model, request, locale);
        return "error/409";
    }
}
