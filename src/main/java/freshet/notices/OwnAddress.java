package freshet.notices;

import jakarta.servlet.http.HttpServletRequest;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.support.ServletUriComponentsBuilder;

/** The address at which people open this install: the one that is set, else that of this machine. */
@Component
class OwnAddress {

    private final String set;
    private final String here;

    OwnAddress(@Value("${freshet.address:}") String set, @Value("${server.port:8080}") String port) {
        this.set = set.strip().replaceAll("/+$", "");
        this.here = "http://localhost:" + port;
    }

    boolean known() {
        return !set.isEmpty();
    }

    /** For what leaves the house: links in mail and in calendars. */
    String forLinks() {
        return known() ? set : here;
    }

    /** For somebody who looks at a page now: where they look, unless one is set. */
    String seenFrom(HttpServletRequest request) {
        return known()
                ? set
                : ServletUriComponentsBuilder.fromContextPath(request).build().toUriString();
    }
}
