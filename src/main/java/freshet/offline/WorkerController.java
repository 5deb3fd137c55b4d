package freshet.offline;

import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.springframework.context.MessageSource;
import org.springframework.core.io.Resource;
import org.springframework.core.io.support.PathMatchingResourcePatternResolver;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.servlet.resource.ResourceUrlProvider;
import tools.jackson.databind.json.JsonMapper;

/** What makes the pages an app on a phone: its name and icons, and the worker that answers when no network does. */
@Controller
class WorkerController {

    /** All that the page without a network is made of, besides itself. */
    private static final List<String> ASSETS = List.of(
            "/app.css",
            "/app.js",
            "/app-pocket.js",
            "/app-offline.js",
            "/stopwatch.js",
            "/webjars/htmx.org/dist/htmx.min.js");

    /** What the worker's own page is made of; a change of any is a new version. */
    private static final List<String> SOURCES =
            List.of("templates/offline/*.html", "templates/layout/*.html", "messages/offline*", "messages/layout*");

    private static final String PAPER = "#f4f6f1";

    private final ResourceUrlProvider addresses;
    private final MessageSource messages;
    private final JsonMapper json;
    private final String sources = digestOfSources();

    WorkerController(ResourceUrlProvider addresses, MessageSource messages, JsonMapper json) {
        this.addresses = addresses;
        this.messages = messages;
        this.json = json;
    }

    /** What the worker is told; as a record, for its text is the same at every start. */
    record Version(String version, List<String> files, String page) {}

    /** Names the version and the files of it; the work itself is done by {@code app-worker.js}. */
    @GetMapping("/service-worker.js")
    ResponseEntity<String> worker(HttpServletRequest request) {
        String path = request.getContextPath();
        List<String> files = ASSETS.stream().map(file -> path + hashed(file)).toList();
        String worker = path + hashed("/app-worker.js");
        String version = digest((sources + files + worker).getBytes(StandardCharsets.UTF_8));
        String script = "self.FRESHET = " + json.writeValueAsString(new Version(version, files, path + "/offline"))
                + ";\nimportScripts(" + json.writeValueAsString(worker) + ");\n";
        return ResponseEntity.ok()
                .contentType(new MediaType("text", "javascript"))
                .cacheControl(CacheControl.noCache())
                .body(script);
    }

    private String hashed(String file) {
        String hashed = addresses.getForLookupPath(file);
        return hashed == null ? file : hashed;
    }

    record Icon(String src, String sizes, String type, String purpose) {}

    @GetMapping("/manifest.webmanifest")
    ResponseEntity<String> manifest(HttpServletRequest request, Locale locale) {
        String path = request.getContextPath();
        List<Icon> icons = new ArrayList<>();
        icons.add(new Icon(path + "/icon.svg", "any", "image/svg+xml", "any"));
        icons.add(new Icon(path + "/icon-192.png", "192x192", "image/png", "any"));
        icons.add(new Icon(path + "/icon-512.png", "512x512", "image/png", "any"));
        icons.add(new Icon(path + "/icon-maskable-512.png", "512x512", "image/png", "maskable"));
        Map<String, Object> manifest = Map.of(
                "id",
                path + "/",
                "name",
                "Freshet",
                "short_name",
                "Freshet",
                "description",
                messages.getMessage("offline.manifest", null, locale),
                "lang",
                locale.getLanguage(),
                "start_url",
                path + "/",
                "scope",
                path + "/",
                "display",
                "standalone",
                "background_color",
                PAPER,
                "icons",
                icons);
        return ResponseEntity.ok()
                .contentType(new MediaType("application", "manifest+json"))
                .cacheControl(CacheControl.noCache())
                .body(json.writeValueAsString(manifest));
    }

    private static String digestOfSources() {
        StringBuilder digests = new StringBuilder();
        for (String pattern : SOURCES) {
            try {
                for (Resource file : new PathMatchingResourcePatternResolver().getResources("classpath*:" + pattern)) {
                    try (InputStream content = file.getInputStream()) {
                        digests.append(Objects.toString(file.getFilename())).append(digest(content.readAllBytes()));
                    }
                }
            } catch (IOException unreadable) {
                throw new UncheckedIOException(unreadable);
            }
        }
        return digests.toString();
    }

    private static String digest(byte[] content) {
        try {
            return HexFormat.of()
                    .formatHex(MessageDigest.getInstance("SHA-256").digest(content))
                    .substring(0, 16);
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException(impossible);
        }
    }
}
