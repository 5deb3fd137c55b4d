package freshet.board;

import java.time.Instant;
import java.time.LocalDate;

/** What a watched measure was at a test or reading, which {@code name} tells from all others. */
record Figure(String name, Instant at, LocalDate day, double value) {}
