package freshet.checklists;

import freshet.pumps.PumpKind;
import org.jspecify.annotations.Nullable;

/** A new checklist that begins as a copy of another; {@code pumpKind} null is for any kind. */
public record CopyDraft(String name, @Nullable PumpKind pumpKind, Phase phase, Effect effect, int minutes) {}
