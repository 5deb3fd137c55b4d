package freshet.care;

import org.jspecify.annotations.Nullable;

/**
 * What was typed at one line: a {@code YES_NO} as {@code YES} or {@code NO}, a choice by its words, {@code DOES_NOT_APPLY}, a number
 * or a text as typed; the same for how it was left; the words and severity of a finding; and what this line was measured with, when that is
 * not what is named for the whole task.
 */
public record Answer(
        long lineId,
        @Nullable String answer,
        @Nullable String asLeft,
        @Nullable String finding,
        @Nullable Integer severity,
        @Nullable String instrument) {

    public Answer(
            long lineId,
            @Nullable String answer,
            @Nullable String asLeft,
            @Nullable String finding,
            @Nullable Integer severity) {
        this(lineId, answer, asLeft, finding, severity, null);
    }

    public static Answer of(long lineId, String answer) {
        return new Answer(lineId, answer, null, null, null);
    }

    public Answer found(String words, int itsSeverity) {
        return new Answer(lineId, answer, asLeft, words, itsSeverity, instrument);
    }

    public Answer with(@Nullable String itsInstrument) {
        return new Answer(lineId, answer, asLeft, finding, severity, itsInstrument);
    }

    boolean empty() {
        return answer == null && asLeft == null && finding == null && severity == null && instrument == null;
    }
}
