package freshet.fleet;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How ready a unit is and why, worst reason first; computed, never typed in. {@code readyUntil} is the last day the word holds if
 * nothing else happens, null unless ready or ready with limits.
 */
public record Readiness(
        Word word, List<Reason> reasons, @Nullable LocalDate readyUntil) {

    /** The reasons that keep it from being simply ready. */
    public List<Reason> against() {
        return reasons.stream().filter(reason -> reason.word() != Word.READY).toList();
    }

    /** What speaks for it. */
    public List<Reason> inFavor() {
        return reasons.stream().filter(reason -> reason.word() == Word.READY).toList();
    }
}
