package freshet.care;

import freshet.checklists.Verdict;
import org.jspecify.annotations.Nullable;

/** One line of a signed record as it was asked and answered; the limits are those it was judged by, the instrument what measured it. */
public record RecordLine(
        int ordinal,
        @Nullable Long checkLineId,
        String section,
        String question,
        @Nullable String answer,
        @Nullable Double number,
        @Nullable String unit,
        @Nullable String limits,
        Verdict verdict,
        @Nullable String asLeft,
        @Nullable String instrument) {}
