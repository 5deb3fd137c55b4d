package freshet.rounds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import freshet.FreshetTest;
import freshet.TestClock;
import freshet.care.Care;
import freshet.care.CareYard;
import freshet.care.SignOff;
import freshet.care.Task;
import freshet.care.Worksheet;
import freshet.checklists.Phase;
import freshet.people.NotFound;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Stale;
import freshet.places.Site;
import freshet.pumps.PumpKind;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;

@FreshetTest
class RoundsTests {

    private static final LocalDate MONDAY = LocalDate.of(2026, 3, 16);

    @Autowired
    Rounds rounds;

    @Autowired
    Care care;

    @Autowired
    Pumps pumps;

    @Autowired
    CareYard yard;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TestClock clock;

    Person ilse;
    Person teo;
    Task first;
    Task second;
    Task third;

    @BeforeEach
    void springMorning() {
        clock.set("2026-03-14T14:00:00Z");
        ilse = yard.ilse();
        teo = yard.teo();
        Site court = yard.site("Dyer Court", CareYard.CHICAGO, CareYard.opening("Thaw", 2, 15, 3, 20));
        first = opening(yard.unit("BF-04"));
        second = opening(yard.unit("QM-104", PumpKind.SUMP_WITH_FLOAT, court.id(), CareYard.LONG_AGO));
        third = opening(yard.unit("BF-05"));
    }

    private Task opening(Unit unit) {
        return care.tasksOf(unit.id()).stream()
                .filter(task -> task.phase() == Phase.OPENING && task.open())
                .findFirst()
                .orElseThrow();
    }

    private void sign(Task task) {
        Worksheet sheet = care.worksheet(task.id());
        care.sign(
                task.id(), new SignOff(sheet.task().version(), CareYard.allPass(sheet, ilse), null, null, null), ilse);
    }

    private long plan(Task... tasks) {
        return rounds.plan(
                RoundDraft.of("Spring round", MONDAY, teo.id())
                        .with(Stream.of(tasks).map(this::seen).toList()),
                ilse);
    }

    /** As a page showed it a moment ago, assigned to nobody. */
    private Chosen seen(Task task) {
        return new Chosen(task.id(), care.task(task.id()).version(), 0);
    }

    @Test
    void keepsTasksAndPumpsInTheirOrderAndCountsTheMinutes() {
        Unit look = yard.unit("BF-06");
        long id = rounds.plan(
                RoundDraft.of(" Spring round ", MONDAY, teo.id())
                        .with(List.of(seen(second), seen(first)))
                        .looking(List.of(look.id())),
                ilse);
        rounds.writeAccess(second.siteId(), -1, "Key safe 4, ring Wim first.", teo);

        Round round = rounds.round(id);
        assertThat(round.name()).isEqualTo("Spring round");
        assertThat(round.personName()).isEqualTo("Teo Brandt");
        assertThat(round.stops()).extracting(Stop::tag).containsExactly("QM-104", "BF-04", "BF-06");
        assertThat(round.stops()).extracting(Stop::place).containsExactly(1, 2, 3);
        assertThat(round.stops().get(0).access()).isEqualTo("Key safe 4, ring Wim first.");
        assertThat(round.stops().get(0).dueOn()).isEqualTo(LocalDate.of(2026, 3, 20));
        assertThat(round.minutes()).isEqualTo(second.minutes() + first.minutes() + 10);
        assertThat(round.next().orElseThrow().tag()).isEqualTo("QM-104");
        assertThat(rounds.roundsOf(teo.id(), MONDAY)).hasSize(1);
        assertThat(rounds.roundsOf(teo.id(), MONDAY.plusDays(1))).isEmpty();
        assertThat(rounds.roundsOf(ilse.id(), MONDAY)).isEmpty();

        rounds.add(id, List.of(third.id(), first.id()), Set.of(look.id()), ilse);
        long lookStop = rounds.round(id).stops().get(2).id();
        rounds.move(id, lookStop, 1, ilse);
        rounds.move(id, rounds.round(id).stops().get(1).id(), 99, ilse);
        assertThat(rounds.round(id).stops()).extracting(Stop::tag).containsExactly("BF-06", "BF-04", "BF-05", "QM-104");
        rounds.remove(id, lookStop, ilse);
        assertThat(rounds.round(id).stops()).extracting(Stop::place).containsExactly(1, 2, 3);
    }

    @Test
    void showsWhatSomebodySignedOrWhatWasWithdrawnMeanwhile() {
        long id = plan(first, second, third);
        sign(first);
        pumps.retire(second.unitId(), pumps.unit(second.unitId()).version(), MONDAY.minusDays(3), "Sold", ilse);

        Round round = rounds.round(id);
        assertThat(round.stops())
                .extracting(Stop::state)
                .containsExactly(StopState.DONE, StopState.WITHDRAWN, StopState.LEFT);
        assertThat(round.stops().get(0).doneBy()).isEqualTo("Ilse Marrow");
        assertThat(round.stops().get(0).recordId()).isNotNull();
        assertThat(round.stops().get(1).stateWhy()).isEqualTo("RETIRED");
        assertThat(round.minutes()).isEqualTo(first.minutes() + third.minutes());
        assertThat(round.minutesLeft()).isEqualTo(third.minutes());
        assertThat(round.next().orElseThrow().tag()).isEqualTo("BF-05");
    }

    @Test
    void keepsAShutDoorOnRecordAndTheStopAmongWhatIsLeft() {
        long id = plan(first, second);
        Stop shut = rounds.round(id).stops().get(0);
        Instant at = Instant.parse("2026-03-14T13:40:00Z");
        rounds.noAccess(id, shut.id(), NoAccessWhy.LOCKED, "Gate chained", at, teo);

        Round round = rounds.round(id);
        assertThat(round.left()).extracting(Stop::tag).containsExactly("QM-104", "BF-04");
        assertThat(round.stops().get(0).state()).isEqualTo(StopState.NO_ACCESS);
        assertThat(round.stops().get(0).noAccess()).singleElement().satisfies(note -> {
            assertThat(note.at()).isEqualTo(at);
            assertThat(note.notedByName()).isEqualTo("Teo Brandt");
            assertThat(note.note()).isEqualTo("Gate chained");
        });
        assertThatThrownBy(
                        () -> jdbc.sql("update no_access set why = 'REFUSED'").update())
                .isInstanceOf(DataAccessException.class)
                .hasMessageContaining("never changed");
        rounds.remove(id, shut.id(), teo);
        rounds.withdraw(id, ilse);
        assertThat(rounds.noAccessOf(first.unitId())).hasSize(1);
        assertThat(rounds.rounds(MONDAY)).isEmpty();
        assertThatThrownBy(() -> rounds.add(id, List.of(third.id()), List.of(), ilse))
                .isInstanceOf(Refused.class);

        long other = plan(first);
        sign(first);
        long done = rounds.round(other).stops().get(0).id();
        assertThatThrownBy(() -> rounds.noAccess(other, done, NoAccessWhy.OTHER, null, at.plusSeconds(9999), teo))
                .isInstanceOf(Refused.class)
                .hasMessageContainingAll("rounds.noAccess.done", "rounds.noAccess.future", "rounds.noAccess.say");
    }

    @Test
    void marksAPumpThatWasLookedAtAndLeavesTasksToTheirSignature() {
        long id = rounds.plan(
                RoundDraft.of("Look", MONDAY, null).with(List.of(seen(first))).looking(List.of(third.unitId())), ilse);
        List<Stop> stops = rounds.round(id).stops();
        rounds.seen(id, stops.get(1).id(), teo);
        rounds.seen(id, stops.get(1).id(), ilse);
        assertThat(rounds.round(id).stops().get(1).state()).isEqualTo(StopState.DONE);
        assertThat(rounds.round(id).stops().get(1).doneBy()).isEqualTo("Teo Brandt");
        assertThatThrownBy(() -> rounds.seen(id, stops.get(0).id(), teo)).isInstanceOf(Refused.class);
    }

    @Test
    void refusesAStaleChangeAndADraftThatIsNone() {
        long id = plan(first);
        rounds.change(id, 0, RoundDraft.of("Monday", MONDAY.plusDays(1), null), ilse);
        assertThat(rounds.round(id).personId()).isNull();
        assertThatThrownBy(() -> rounds.change(id, 0, RoundDraft.of("Late", MONDAY, null), teo))
                .isInstanceOf(Stale.class);
        assertThat(rounds.round(id).name()).isEqualTo("Monday");
        assertThatThrownBy(() -> rounds.plan(RoundDraft.of(" ", null, null), ilse))
                .hasMessageContainingAll("rounds.name.shape", "rounds.day.missing");
        assertThatThrownBy(() -> rounds.plan(RoundDraft.of("x", MONDAY, 99999L), ilse))
                .hasMessageContaining("rounds.person.unknown");
        assertThatThrownBy(() -> rounds.round(99999)).isInstanceOf(NotFound.class);
        rounds.writeAccess(first.siteId(), -1, "Dog", teo);
        assertThatThrownBy(() -> rounds.writeAccess(first.siteId(), 7, "Cat", ilse))
                .isInstanceOf(Stale.class);
    }

    @Test
    void doesNothingHalfWhenSomeTasksChangedMeanwhile() {
        List<Chosen> chosen = List.of(seen(first), seen(second), seen(third));
        sign(first);
        rounds.assign(List.of(seen(third)), teo.id(), ilse);

        TasksChanged refused = catchThrowableOfType(
                TasksChanged.class,
                () -> rounds.plan(RoundDraft.of("Monday", MONDAY, null).with(chosen), ilse));
        assertThat(refused.tasks())
                .extracting(ChangedTask::tag, ChangedTask::how, ChangedTask::who)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple("BF-04", ChangedTask.How.SIGNED, "Ilse Marrow"),
                        org.assertj.core.groups.Tuple.tuple("BF-05", ChangedTask.How.ASSIGNED, "Teo Brandt"));
        assertThatThrownBy(() -> rounds.assign(chosen, ilse.id(), ilse)).isInstanceOf(TasksChanged.class);
        assertThat(rounds.rounds(MONDAY)).isEmpty();
        assertThat(assigned(second)).isNull();
        assertThat(assigned(third)).isEqualTo(teo.id());
        assertThat(care.task(third.id()).version())
                .as("whoever answers it is not disturbed")
                .isZero();
    }

    private Long assigned(Task task) {
        return jdbc.sql("select assigned_to from task where id = ?")
                .param(task.id())
                .query((row, n) -> row.getObject(1, Long.class))
                .list()
                .get(0);
    }

    @Test
    void letsTwoPlanTheSameTasksAtOnceAndSaysSoOnBoth() throws Exception {
        List<Chosen> chosen = List.of(seen(first), seen(second));
        List<Chosen> otherWay = List.of(seen(second), seen(first));
        ExecutorService two = Executors.newFixedThreadPool(2);
        try {
            List<Callable<Long>> plans = List.of(
                    () -> rounds.plan(RoundDraft.of("A", MONDAY, teo.id()).with(chosen), teo),
                    () -> rounds.plan(RoundDraft.of("B", MONDAY, ilse.id()).with(otherWay), ilse));
            for (Future<Long> planned : two.invokeAll(plans)) {
                Round round = rounds.round(planned.get());
                assertThat(round.stops())
                        .hasSize(2)
                        .allSatisfy(stop -> assertThat(stop.alsoOn())
                                .singleElement()
                                .satisfies(also -> assertThat(also.name()).isNotEqualTo(round.name())));
            }
        } finally {
            two.shutdown();
        }
        assertThat(rounds.rounds(MONDAY)).hasSize(2);
    }
}
