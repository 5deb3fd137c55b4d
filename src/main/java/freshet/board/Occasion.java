package freshet.board;

import freshet.happenings.HappeningKind;
import java.time.Instant;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** Something that happened to a unit, or, without a kind, its move to where it stood next; {@code id} is the happening's or the stand's. */
record Occasion(long id, @Nullable HappeningKind kind, Instant at, LocalDate day) {}
