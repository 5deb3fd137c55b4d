package freshet.places;

import java.time.MonthDay;
import org.jspecify.annotations.Nullable;

/** A window to be; {@code id} null is matched by kind and name, so that a window keeps its turns when its days change. */
public record WindowDraft(@Nullable Long id, WindowKind kind, String name, MonthDay from, MonthDay to) {}
