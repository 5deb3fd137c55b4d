package freshet.people;

import java.time.Instant;

/** A live token of a program, by its label. */
public record Token(long id, String label, Instant createdAt) {}
