package freshet.checklists;

import freshet.people.Competence;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A line as an owner wants it. {@code origin} names the line that it is, null for a new one; limits are in the line's unit, or
 * fractions of the plate's figure where the line's limits are.
 */
public record LineDraft(
        @Nullable Long origin,
        String section,
        String question,
        @Nullable String hint,
        @Nullable String caution,
        AnswerKind kind,
        @Nullable String unit,
        @Nullable Double passLow,
        @Nullable Double passHigh,
        @Nullable Double watchLow,
        @Nullable Double watchHigh,
        List<Choice> choices,
        @Nullable Integer failSeverity,
        boolean required,
        boolean mayNotApply,
        boolean asLeft,
        boolean asksInstrument,
        @Nullable Competence competence,
        @Nullable String source) {

    /** The line as it stands. */
    public static LineDraft of(CheckLine line) {
        Limits limits = line.limits();
        return new LineDraft(
                line.origin(),
                line.section(),
                line.question(),
                line.hint(),
                line.caution(),
                line.kind(),
                line.unit(),
                limits.passLow(),
                limits.passHigh(),
                limits.watchLow(),
                limits.watchHigh(),
                line.choices(),
                line.failSeverity(),
                line.required(),
                line.mayNotApply(),
                line.asLeft(),
                line.asksInstrument(),
                line.competence(),
                line.source());
    }
}
