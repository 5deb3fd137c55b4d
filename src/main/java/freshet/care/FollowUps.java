package freshet.care;

import freshet.board.Why;
import freshet.checklists.Checklist;
import freshet.checklists.Checklists;
import freshet.checklists.Effect;
import freshet.checklists.Phase;
import freshet.findings.Hold;
import freshet.findings.HoldKind;
import freshet.people.Competence;
import freshet.pumps.Unit;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** The tasks that other work leaves behind: the electrical test that somebody else must do, and the check after a repair. */
@Component
class FollowUps {

    /** Common practice, no source. */
    private static final int DAYS_TO_ACT = 7;

    private final TaskTable tasks;
    private final Checklists checklists;
    private final Clock clock;

    FollowUps(TaskTable tasks, Checklists checklists, Clock clock) {
        this.tasks = tasks;
        this.checklists = checklists;
        this.clock = clock;
    }

    /** For required lines that were left to a person competent for electrical work, unless such a task is open already. */
    void electricalTest(Unit unit, long recordId, Why why) {
        ofKind(unit, checklist -> checklist.phase() == Phase.ELECTRICAL && checklist.needs(Competence.ELECTRICAL))
                .ifPresent(checklist -> open(unit, checklist, "left:" + recordId, why));
    }

    /** For required lines that were left to somebody competent for anything else: the same list again, for such a person. */
    void again(Unit unit, Checklist checklist, long recordId, Why why) {
        open(unit, checklist, "left:" + recordId, why);
    }

    /** For a unit whose finding stopped its use and was closed: nothing proves it until it is checked, unless that is to do already. */
    void checkAfterRepair(Unit unit, long findingId, Why why) {
        afterRepair(unit).ifPresent(checklist -> open(unit, checklist, "mended:" + findingId, why));
    }

    /** The way back for a unit that is held, unless that is to do already. */
    void reTest(Unit unit, Hold hold) {
        Optional<Checklist> checklist = hold.kind() == HoldKind.QUARANTINE
                ? ofKind(unit, each -> each.phase() == Phase.AFTER_HIRE)
                : Optional.empty();
        checklist.or(() -> afterRepair(unit)).ifPresent(each -> open(unit, each, "held:" + hold.id(), Why.of("held")));
    }

    /** The list for a repaired pump of its kind; the opening where there is none. */
    private Optional<Checklist> afterRepair(Unit unit) {
        return ofKind(unit, checklist -> checklist.phase() == Phase.AFTER_REPAIR && checklist.effect() == Effect.PROVES)
                .or(() -> ofKind(
                        unit, checklist -> checklist.phase() == Phase.OPENING && checklist.effect() == Effect.PROVES));
    }

    /** A checklist made for the unit's kind of pump comes before one for any kind. */
    private Optional<Checklist> ofKind(Unit unit, Predicate<Checklist> fits) {
        return checklists.checklists().stream()
                .filter(fits)
                .filter(checklist -> checklist.pumpKind() == null
                        || checklist.pumpKind() == unit.model().kind())
                .max(Comparator.comparing(checklist -> checklist.pumpKind() != null));
    }

    private void open(Unit unit, Checklist checklist, String occurrence, @Nullable Why why) {
        LocalDate today = LocalDate.ofInstant(clock.instant(), unit.stand().zone());
        List<Task> toDo = tasks.ofUnit(unit.id());
        if (!unit.retired()
                && toDo.stream().noneMatch(task -> task.checklistId() == checklist.id() && task.openOn(today))) {
            tasks.open(
                    unit.id(),
                    checklist.id(),
                    occurrence,
                    checklist.name(),
                    why,
                    today,
                    today.plusDays(DAYS_TO_ACT),
                    clock.instant());
        }
    }
}
