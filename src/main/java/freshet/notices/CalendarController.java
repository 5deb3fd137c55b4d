package freshet.notices;

import java.nio.charset.StandardCharsets;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;

/** Hands a calendar out at its secret address; who has it already is told so. */
@Controller
class CalendarController {

    private static final MediaType CALENDAR = new MediaType("text", "calendar", StandardCharsets.UTF_8);

    private final Notices notices;

    CalendarController(Notices notices) {
        this.notices = notices;
    }

    @GetMapping("/calendar/{secret}.ics")
    ResponseEntity<byte[]> calendar(@PathVariable String secret) {
        CalendarFile file = notices.calendar(secret);
        return ResponseEntity.ok()
                .contentType(CALENDAR)
                .eTag("\"" + file.tag() + "\"")
                .lastModified(file.changedAt())
                .cacheControl(CacheControl.noCache().cachePrivate())
                .header("X-Robots-Tag", "noindex")
                .body(file.bytes());
    }
}
