package freshet.exchange;

import freshet.people.Person;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.access.prepost.PreAuthorize;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Pages on which an owner hands files in, looks at what they would do, and has them taken in. */
@Controller
@PreAuthorize("hasRole('OWNER')")
class ImportController {

    /** So many problems and changes are shown; all are counted. */
    static final int MOST_SHOWN = 200;

    private static final int LONGEST_FILE_NAME = 100;

    private final Exchange exchange;

    ImportController(Exchange exchange) {
        this.exchange = exchange;
    }

    /** A kind of file with its columns, for the page that describes them. */
    record KindPage(FileKind kind, List<Column> columns) {}

    @ModelAttribute("kinds")
    List<KindPage> kinds() {
        return List.of(FileKind.values()).stream()
                .map(kind -> new KindPage(kind, exchange.columns(kind)))
                .toList();
    }

    @ModelAttribute("words")
    FileWords words(Person me) {
        return exchange.words(me);
    }

    @ModelAttribute("mostShown")
    int mostShown() {
        return MOST_SHOWN;
    }

    @GetMapping("/import")
    String choose(@RequestParam(required = false) @Nullable String tooLarge, Model model) {
        if (tooLarge != null) {
            model.addAttribute("wrong", "exchange.tooLarge");
        }
        return "exchange/import";
    }

    @PostMapping("/import")
    String look(
            @RequestParam(required = false) @Nullable List<MultipartFile> files,
            Model model,
            HttpSession session,
            HttpServletResponse response,
            Person me)
            throws IOException {
        List<NamedFile> named = named(files);
        if (named.isEmpty()) {
            return again(model, response, HttpStatus.UNPROCESSABLE_CONTENT, "exchange.choose.none");
        }
        Preview shown = exchange.preview(named, me);
        if (!shown.clean()) {
            session.removeAttribute(Waiting.KEY);
            return problems(shown, model, response);
        }
        session.setAttribute(Waiting.KEY, new Waiting(named, shown));
        return "redirect:/import/preview";
    }

    private static List<NamedFile> named(@Nullable List<MultipartFile> files) throws IOException {
        List<NamedFile> named = new ArrayList<>();
        for (MultipartFile file : files == null ? List.<MultipartFile>of() : files) {
            String name = Optional.ofNullable(file.getOriginalFilename())
                    .map(path -> path.substring(Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\')) + 1))
                    .orElse("");
            if (!name.isBlank()) {
                named.add(
                        new NamedFile(name.substring(0, Math.min(name.length(), LONGEST_FILE_NAME)), file.getBytes()));
            }
        }
        return named;
    }

    @GetMapping("/import/preview")
    String show(Model model, HttpSession session) {
        Waiting waiting = waiting(session);
        if (waiting == null) {
            return "redirect:/import";
        }
        model.addAttribute("preview", waiting.shown());
        return "exchange/preview";
    }

    @PostMapping("/import/preview")
    String takeIn(
            @RequestParam(defaultValue = "") String agreed,
            Model model,
            HttpSession session,
            HttpServletResponse response,
            RedirectAttributes next,
            Person me) {
        Waiting waiting = waiting(session);
        if (waiting == null || !waiting.shown().fingerprint().equals(agreed)) {
            return again(model, response, HttpStatus.CONFLICT, "exchange.preview.gone");
        }
        try {
            next.addFlashAttribute("taken", exchange.takeIn(waiting.files(), agreed, me));
            session.removeAttribute(Waiting.KEY);
            return "redirect:/import";
        } catch (ImportRefused refused) {
            Preview now = refused.preview();
            if (!now.clean()) {
                session.removeAttribute(Waiting.KEY);
                return problems(now, model, response);
            }
            session.setAttribute(Waiting.KEY, new Waiting(waiting.files(), now));
            response.setStatus(HttpStatus.CONFLICT.value());
            model.addAttribute("preview", now);
            model.addAttribute("changedMeanwhile", true);
            return "exchange/preview";
        }
    }

    private static @Nullable Waiting waiting(HttpSession session) {
        return session.getAttribute(Waiting.KEY) instanceof Waiting waiting ? waiting : null;
    }

    private static String problems(Preview preview, Model model, HttpServletResponse response) {
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        model.addAttribute("preview", preview);
        return "exchange/import";
    }

    private static String again(Model model, HttpServletResponse response, HttpStatus status, String wrong) {
        response.setStatus(status.value());
        model.addAttribute("wrong", wrong);
        return "exchange/import";
    }
}
