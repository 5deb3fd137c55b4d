package freshet.care;

import freshet.checklists.Checklist;
import freshet.checklists.Checklists;
import freshet.checklists.Effect;
import freshet.checklists.Phase;
import freshet.pumps.Unit;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
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

    /** For lines that were left to a competent person, unless such a task is open already. */
    void electricalTest(Unit unit, long recordId, String why) {
        checklists.checklists().stream()
                .filter(checklist -> checklist.phase() == Phase.ELECTRICAL)
                .findFirst()
                .ifPresent(checklist -> open(unit, checklist, "left:" + recordId, checklist.name(), why));
    }

    /** For a unit whose finding stopped its use and was closed: nothing proves it until it is checked, unless that is to do already. */
    void checkAfterRepair(Unit unit, long findingId, String why) {
        Optional<Checklist> proof = checklists.checklists().stream()
                .filter(checklist -> checklist.phase() == Phase.OPENING && checklist.effect() == Effect.PROVES)
                .filter(checklist -> checklist.pumpKind() == unit.model().kind())
                .findFirst();
        proof.ifPresent(checklist -> open(unit, checklist, "mended:" + findingId, "Check after repair", why));
    }

    private void open(Unit unit, Checklist checklist, String occurrence, String title, String why) {
        LocalDate today = LocalDate.ofInstant(clock.instant(), unit.stand().zone());
        List<Task> toDo = tasks.ofUnit(unit.id());
        if (!unit.retired()
                && toDo.stream().noneMatch(task -> task.checklistId() == checklist.id() && task.openOn(today))) {
            tasks.open(
                    unit.id(),
                    checklist.id(),
                    occurrence,
                    title,
                    why,
                    today,
                    today.plusDays(DAYS_TO_ACT),
                    clock.instant());
        }
    }
}
