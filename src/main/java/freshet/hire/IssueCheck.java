package freshet.hire;

import freshet.fleet.Readiness;
import freshet.fleet.Reason;
import freshet.fleet.ReasonKind;
import freshet.fleet.Word;
import freshet.people.Refused.Wrong;
import freshet.pumps.Drive;
import freshet.pumps.Unit;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Whether a unit may go out: refused, not warned, when it is not proven fit for every day of the hire. */
public record IssueCheck(Unit unit, Readiness readiness) {

    /** What keeps it from going out at all, whatever is typed: messages about the whole form. */
    public List<Wrong> refusals() {
        List<Wrong> wrongs = new ArrayList<>();
        if (unit.retired()) {
            wrongs.add(Wrong.at("", "hire.refused.retired"));
        } else if (unit.customerName() != null) {
            wrongs.add(Wrong.at("", "hire.refused.customers", unit.customerName()));
        } else if (readiness.word() == Word.NOT_READY) {
            wrongs.add(Wrong.at("", "hire.refused.notReady"));
        } else if (readiness.word() == Word.UNKNOWN) {
            wrongs.add(Wrong.at("", "hire.refused.unknown"));
        }
        return wrongs;
    }

    public boolean refused() {
        return !refusals().isEmpty();
    }

    /** The reasons against it: what refuses it, or what limits it. */
    public List<Reason> against() {
        return readiness.against();
    }

    public boolean limited() {
        return readiness.word() == Word.LIMITS;
    }

    /** The last day of its electrical proof; null when there is none, as for an engine. */
    public @Nullable LocalDate proofUntil() {
        return until(ReasonKind.ELECTRICAL);
    }

    private @Nullable LocalDate until(ReasonKind proof) {
        return readiness.reasons().stream()
                .filter(reason -> reason.kind() == proof)
                .map(Reason::until)
                .filter(Objects::nonNull)
                .findFirst()
                .orElse(null);
    }

    /** What is wrong with a last day: beyond the electrical proof or that of what it gives, whose last day is then the argument. */
    @Nullable
    Wrong proofWrong(LocalDate dueBackOn) {
        LocalDate safe = proofUntil();
        if (safe == null && unit.model().drive() != Drive.ENGINE) {
            return Wrong.at("dueBackOn", "hire.refused.noProof");
        }
        if (safe != null && safe.isBefore(dueBackOn)) {
            return Wrong.at("dueBackOn", "hire.refused.proofEnds", safe);
        }
        LocalDate able = until(ReasonKind.PROVED);
        return able != null && able.isBefore(dueBackOn)
                ? Wrong.at("dueBackOn", "hire.refused.performanceEnds", able)
                : null;
    }
}
