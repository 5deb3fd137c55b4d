package freshet.offline;

import freshet.people.Person;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSource;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.security.web.csrf.CsrfToken;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.json.JsonMapper;

/** Answers the phones that deliver; a session of the page's own sign-in lets them in. */
@Controller
class DeliveryController {

    private final Offline offline;
    private final MessageSource messages;
    private final JsonMapper json;

    DeliveryController(Offline offline, MessageSource messages, JsonMapper json) {
        this.offline = offline;
        this.messages = messages;
        this.json = json;
    }

    /** An answer in the words of the page. */
    record Said(String outcome, @Nullable String link, List<Wrong> wrongs) {}

    record Wrong(String field, String message) {}

    /** Who is signed in, and what a delivery has to carry. */
    @GetMapping("/offline/token")
    ResponseEntity<Map<String, Object>> token(CsrfToken token, Person me) {
        return ResponseEntity.ok()
                .cacheControl(CacheControl.noStore())
                .body(Map.of("header", token.getHeaderName(), "token", token.getToken(), "person", me.id()));
    }

    @PostMapping(path = "/offline/deliver", consumes = "application/json")
    ResponseEntity<Said> deliver(@RequestBody String body, Person me, Locale locale) {
        Entry entry;
        try {
            entry = Objects.requireNonNull(json.readValue(body, Entry.class));
        } catch (JacksonException | IllegalArgumentException | NullPointerException unread) {
            String odd = messages.getMessage("offline.odd", null, locale);
            return ResponseEntity.badRequest().body(new Said("REFUSED", null, List.of(new Wrong("", odd))));
        }
        Delivered delivered = offline.deliver(entry, me);
        HttpStatus status = switch (delivered.outcome()) {
            case DONE -> HttpStatus.OK;
            case REFUSED -> HttpStatus.UNPROCESSABLE_CONTENT;
            case CONFLICT -> HttpStatus.CONFLICT;
        };
        List<Wrong> wrongs = delivered.wrongs().stream()
                .map(wrong -> new Wrong(
                        wrong.field(),
                        messages.getMessage(wrong.code(), wrong.arguments().toArray(), wrong.code(), locale)))
                .toList();
        return ResponseEntity.status(status).body(new Said(delivered.outcome().name(), delivered.link(), wrongs));
    }
}
