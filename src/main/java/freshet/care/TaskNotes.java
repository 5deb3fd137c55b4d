package freshet.care;

import org.jspecify.annotations.Nullable;

/**
 * What was typed beside the lines of a task, as it was typed: when the work began and ended, what it was measured with, and a note. To a
 * door, null leaves what is kept as it is, and an empty text clears it.
 */
public record TaskNotes(
        @Nullable String began,
        @Nullable String ended,
        @Nullable String instrument,
        @Nullable String note) {

    public static final TaskNotes NONE = new TaskNotes(null, null, null, null);
}
