package freshet.photos;

import java.time.Duration;
import java.util.Map;
import org.springframework.http.CacheControl;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;

/** Gives photos to people who are signed in. */
@Controller
class PhotoController {

    /** What an id stands for never changes; only the browser of this person keeps it. */
    private static final CacheControl FOR_GOOD =
            CacheControl.maxAge(Duration.ofDays(365)).cachePrivate().immutable();

    /** Whatever a browser takes the file for, it runs nothing. */
    private static final String NOTHING_RUNS = "default-src 'none'; sandbox; frame-ancestors 'none'";

    private static final Map<String, String> ENDING =
            Map.of("image/jpeg", "jpg", "image/png", "png", "image/webp", "webp");

    private final Photos photos;

    PhotoController(Photos photos) {
        this.photos = photos;
    }

    @GetMapping("/photos/{id}")
    ResponseEntity<byte[]> photo(@PathVariable long id) {
        return answer("photo-" + id, photos.file(id));
    }

    @GetMapping("/photos/{id}/small")
    ResponseEntity<byte[]> small(@PathVariable long id) {
        return answer("photo-" + id + "-small", photos.small(id));
    }

    private static ResponseEntity<byte[]> answer(String name, PhotoFile file) {
        return ResponseEntity.ok()
                .contentType(MediaType.parseMediaType(file.mediaType()))
                .cacheControl(FOR_GOOD)
                .eTag(file.sha256())
                .header("Content-Security-Policy", NOTHING_RUNS)
                .header("X-Content-Type-Options", "nosniff")
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        ContentDisposition.inline()
                                .filename(name + "." + ENDING.get(file.mediaType()))
                                .build()
                                .toString())
                .body(file.bytes());
    }
}
