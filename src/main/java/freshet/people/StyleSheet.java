package freshet.people;

import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Duration;
import java.util.Base64;
import java.util.HexFormat;
import org.springframework.core.io.ClassPathResource;
import org.springframework.http.ResponseCookie;
import org.springframework.stereotype.Component;
import org.springframework.web.util.WebUtils;

/** The present style sheet, which stands in the first page that a browser opens, so that it need not be waited for. */
@Component
class StyleSheet {

    private static final String COOKIE = "sheet";

    private final String text;
    private final byte[] digest;

    StyleSheet() throws IOException, NoSuchAlgorithmException {
        text = new ClassPathResource("static/app.css").getContentAsString(StandardCharsets.UTF_8);
        digest = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
    }

    String text() {
        return text;
    }

    /** As a Content-Security-Policy allows it: this text and no other. */
    String source() {
        return "'sha256-" + Base64.getEncoder().encodeToString(digest) + "'";
    }

    /** Whether a page is opened in a window, not fetched by a script, of a browser that was not given this sheet before. */
    boolean isNewTo(HttpServletRequest request) {
        var held = WebUtils.getCookie(request, COOKIE);
        return "GET".equals(request.getMethod())
                && "document".equals(request.getHeader("Sec-Fetch-Dest"))
                && (held == null || !held.getValue().equals(name()));
    }

    ResponseCookie given(HttpServletRequest request) {
        return ResponseCookie.from(COOKIE, name())
                .path(request.getContextPath() + "/")
                .maxAge(Duration.ofDays(365))
                .httpOnly(true)
                .secure(request.isSecure())
                .sameSite("Lax")
                .build();
    }

    private String name() {
        return HexFormat.of().formatHex(digest, 0, 8);
    }
}
