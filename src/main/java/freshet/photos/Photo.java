package freshet.photos;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * What is known of a kept photo; {@code width} and {@code height} are in pixels as it is seen, {@code size} in bytes, {@code takenAt}
 * is what the camera said, where it said in which time zone.
 */
public record Photo(
        long id,
        String sha256,
        String mediaType,
        int width,
        int height,
        int size,
        @Nullable Instant takenAt,
        String keptByName,
        Instant keptAt) {}
