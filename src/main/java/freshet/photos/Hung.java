package freshet.photos;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** A photo that hangs on something, with the words below it; {@code subject} is written as in the trail, such as {@code unit:17}. */
public record Hung(
        long id,
        long photoId,
        String subject,
        @Nullable String caption,
        int width,
        int height,
        long hungBy,
        String hungByName,
        Instant hungAt) {}
