package freshet.fleet;

import freshet.findings.HoldKind;
import freshet.findings.Why;
import freshet.measures.Show;
import freshet.phrases.Phrases;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.springframework.context.support.DefaultMessageSourceResolvable;

/**
 * One reason for a unit's readiness and the word that it alone would give. {@code on} is the day it is about and {@code until} the last
 * day it holds, both at the unit's site; {@code subjectId} is the finding's, task's or record's id. Only the figures of its kind are set.
 */
public record Reason(
        ReasonKind kind,
        Word word,
        @Nullable LocalDate on,
        @Nullable LocalDate until,
        @Nullable Long subjectId,
        @Nullable Integer severity,
        @Nullable String words,
        @Nullable Figure figure,
        @Nullable Held held,
        @Nullable PutOff putOff) {

    /** A remaining capacity as it is to be said: a fraction of reference flow with its expanded uncertainty, at a head, from so many tests. */
    public record Figure(double fraction, double expandedUncertainty, double headM, int tests) {}

    /** That the work for a finding is put off, to the end of this day and by whom. */
    public record PutOff(LocalDate until, String by) {}

    /** What a hold says beside its day. */
    public record Held(HoldKind kind, Why why, String byName) {}

    static Reason of(ReasonKind kind, Word word) {
        return new Reason(kind, word, null, null, null, null, null, null, null, null);
    }

    static Reason on(ReasonKind kind, Word word, LocalDate on, @Nullable LocalDate until, @Nullable Long subjectId) {
        return new Reason(kind, word, on, until, subjectId, null, null, null, null, null);
    }

    /** The key of its message. */
    public String code() {
        return "fleet.reason." + kind.name().toLowerCase(Locale.ROOT) + (putOff == null ? "" : ".putOff");
    }

    /** The page of the finding, the task or the record that it is about. */
    public @Nullable String address() {
        if (subjectId == null) {
            return null;
        }
        return switch (kind) {
            case FINDING -> "/findings/" + subjectId;
            case OPENING_DUE, OPENING_LATE, CHECK_DUE, CHECK_LATE, ELECTRICAL_LEFT -> "/tasks/" + subjectId;
            case PROVED, PROOF_OLD -> "/records/" + subjectId;
            default -> null;
        };
    }

    /** What its message is filled with, in the reader's units. */
    public Object[] arguments(Show show) {
        List<Object> arguments = new ArrayList<>();
        if (severity != null) {
            arguments.add(severity);
        }
        if (words != null) {
            arguments.add(Phrases.said(show.locale(), words));
        }
        if (figure != null) {
            arguments.add(show.percent(figure.fraction()));
            arguments.add(show.percent(figure.expandedUncertainty()));
            arguments.add(show.head(figure.headM()));
            arguments.add(figure.tests());
        }
        if (on != null) {
            arguments.add(show.date(on));
        }
        if (putOff != null) {
            arguments.add(show.date(putOff.until()));
            arguments.add(putOff.by());
        }
        if (held != null) {
            arguments.add(new DefaultMessageSourceResolvable("findings.hold." + held.kind()));
            arguments.add(held.byName());
            arguments.add(held.why().said());
        }
        return arguments.toArray();
    }
}
