package freshet.hire;

import java.time.Instant;
import java.time.LocalDate;

/** Another last day that a hire was given, earlier or later, and by whom. */
public record Extension(LocalDate wasDueOn, LocalDate dueBackOn, String byName, Instant at) {}
