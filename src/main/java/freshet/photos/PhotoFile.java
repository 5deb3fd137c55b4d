package freshet.photos;

/** A photo as a browser gets it. */
public record PhotoFile(String mediaType, String sha256, byte[] bytes) {}
