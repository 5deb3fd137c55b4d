package freshet.exchange;

import freshet.people.NotFound;
import freshet.people.Person;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import org.springframework.core.io.ClassPathResource;
import org.springframework.core.io.Resource;
import org.springframework.http.ContentDisposition;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.security.access.prepost.PreAuthorize;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;

/** Files to fetch: one to begin with for each kind, and everything that stands in the register. */
@Controller
@PreAuthorize("hasRole('OWNER')")
class DownloadController {

    private static final MediaType CSV = new MediaType("text", "csv", StandardCharsets.UTF_8);

    private final Exchange exchange;

    DownloadController(Exchange exchange) {
        this.exchange = exchange;
    }

    @GetMapping("/import/templates/{kind}.csv")
    ResponseEntity<Resource> template(@PathVariable String kind, Person me) {
        FileKind known = known(kind);
        return file(exchange.words(me).word(known.word() + " template")).body(template(known, me.locale()));
    }

    /** In the reader's language where there is one, else in English. */
    static Resource template(FileKind kind, Locale locale) {
        Resource own = new ClassPathResource("import-templates/" + locale.getLanguage() + "/" + kind.word() + ".csv");
        return own.exists() ? own : new ClassPathResource("import-templates/" + kind.word() + ".csv");
    }

    @GetMapping("/export/{kind}.csv")
    ResponseEntity<byte[]> export(@PathVariable String kind, Person me) {
        FileKind known = known(kind);
        return file(known.word()).body(exchange.export(known, me));
    }

    private static FileKind known(String word) {
        return FileKind.of(word).orElseThrow(() -> new NotFound("kind of file", word));
    }

    private static ResponseEntity.BodyBuilder file(String name) {
        return ResponseEntity.ok()
                .contentType(CSV)
                .headers(headers -> headers.setContentDisposition(
                        ContentDisposition.attachment().filename(name + ".csv").build()));
    }
}
