package freshet.tags;

import jakarta.servlet.http.HttpServletRequest;
import java.net.URI;
import java.util.Set;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.support.ServletUriComponentsBuilder;

/** Where phones reach this install: the setting {@code freshet.address}, else the address that the browser itself came by. */
@Component
class PrintedAddress {

    private static final Set<String> ONLY_THIS_MACHINE = Set.of("localhost", "127.0.0.1", "[::1]", "0.0.0.0");

    private final String setting;

    PrintedAddress(@Value("${freshet.address:}") String setting) {
        this.setting = setting.strip().replaceAll("/+$", "");
        if (!this.setting.isEmpty() && !this.setting.matches("https?://[^/?#\\s]+(/[^?#\\s]*)?")) {
            throw new IllegalStateException(
                    "freshet.address is \"" + setting + "\", which is no address such as https://pumps.example.org");
        }
    }

    /** The address without a slash at its end. */
    String base(HttpServletRequest request) {
        return setting.isEmpty()
                ? ServletUriComponentsBuilder.fromContextPath(request).toUriString()
                : setting;
    }

    /** No other machine can open this address. */
    static boolean onlyThisMachine(String base) {
        return ONLY_THIS_MACHINE.contains(String.valueOf(URI.create(base).getHost()));
    }
}
