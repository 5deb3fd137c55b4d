package freshet.care;

/** A photo at a task that is not signed yet; {@code width} and {@code height} are in pixels. */
public record TaskPhoto(
        long id, PhotoPlace place, long photoId, String sha256, int width, int height, String addedByName) {}
