package freshet.board;

import static freshet.care.CareYard.allPass;
import static freshet.care.CareYard.flowTest;
import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.TestClock;
import freshet.care.Care;
import freshet.care.CareYard;
import freshet.care.SignOff;
import freshet.care.Task;
import freshet.care.TaskState;
import freshet.checklists.Phase;
import freshet.people.Person;
import freshet.pumps.Unit;
import freshet.readings.Readings;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;

@FreshetTest
class CapacityTests {

    /** Times for 60 L at 3 m of lift: 97 %, 75 % and 70 % of the rated flow. */
    private static final double GOOD = 21.8;

    private static final double LOW = 28.3;
    private static final double LOWER = 30.3;

    @Autowired
    Board board;

    @Autowired
    Care care;

    @Autowired
    Readings readings;

    @Autowired
    CareYard yard;

    @Autowired
    TestClock clock;

    Person ilse;
    Unit unit;

    @BeforeEach
    void anUntestedUnit() {
        clock.set("2026-03-14T14:00:00Z");
        ilse = yard.ilse();
        unit = yard.unit("BF-07");
    }

    private long test(double seconds) {
        clock.advance(Duration.ofDays(1));
        return readings.recordFlowTest(flowTest(unit.id(), clock.instant(), seconds), ilse);
    }

    private List<Task> tasks() {
        return care.tasksOf(unit.id()).stream()
                .filter(task -> task.phase() == Phase.CAPACITY)
                .toList();
    }

    @Test
    void opensOneTaskForAStretchOfTestsBelowTheThreshold() {
        test(GOOD);
        assertThat(readings.capacity(unit.id()).orElseThrow().fraction()).isBetween(0.9, 1.05);
        assertThat(tasks()).isEmpty();
        test(LOW);
        assertThat(readings.capacity(unit.id()).orElseThrow().fraction()).isBetween(0.7, 0.8);
        test(LOWER);
        board.plan();

        assertThat(tasks()).singleElement().satisfies(task -> {
            assertThat(task.title()).isEqualTo("Clean, measure the gap, test again");
            assertThat(task.why()).isEqualTo(new Why("condition.CAPACITY", List.of("80", "2026-03-16")));
            assertThat(task.opensOn()).isEqualTo("2026-03-16");
            assertThat(task.dueOn()).isEqualTo("2026-03-30");
        });
    }

    @Test
    void opensNoneAgainInTheSameStretchOnceItIsSigned() {
        test(GOOD);
        test(LOW);
        Task task = tasks().get(0);
        care.sign(task.id(), SignOff.of(0, allPass(care.worksheet(task.id()), ilse)), ilse);
        test(LOW);
        board.plan();
        assertThat(tasks()).hasSize(1);
    }

    @Test
    void opensOneForEachStretch() {
        test(GOOD);
        test(LOW);
        test(GOOD);
        assertThat(tasks()).extracting(Task::state).containsExactly(TaskState.WITHDRAWN);
        test(LOW);
        assertThat(tasks()).extracting(Task::state).containsExactly(TaskState.WITHDRAWN, TaskState.OPEN);
    }

    @Test
    void takesTheTaskBackWithTheTestThatMadeIt() {
        test(GOOD);
        long wrong = test(LOW);
        readings.withdrawFlowTest(wrong, "Wrong drum", ilse);
        assertThat(tasks()).extracting(Task::state).containsExactly(TaskState.WITHDRAWN);
    }
}
