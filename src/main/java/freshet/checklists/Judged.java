package freshet.checklists;

import org.jspecify.annotations.Nullable;

/** An answer as it is kept, with its number in the check's unit when it is one, and its verdict. */
public record Judged(@Nullable String answer, @Nullable Double number, Verdict verdict) {

    static final Judged LEFT = new Judged(null, null, Verdict.LEFT);
}
