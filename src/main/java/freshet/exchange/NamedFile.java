package freshet.exchange;

/** A file that somebody hands in. */
public record NamedFile(String name, byte[] content) {}
