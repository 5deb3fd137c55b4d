package freshet.rounds;

import freshet.board.Board;
import freshet.care.Care;
import freshet.care.Task;
import freshet.people.NotFound;
import freshet.people.People;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Stale;
import freshet.places.Places;
import freshet.places.Site;
import freshet.pumps.Pumps;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The door to rounds: planning and changing them, what became of their stops, whose work is whose, and how one gets in. */
@Service
@Transactional
public class Rounds {

    private static final Duration CLOCKS_MAY_DIFFER = Duration.ofMinutes(5);
    private static final int LONGEST_NAME = 100;
    private static final int LONGEST_NOTE = 500;
    private static final int MOST_STOPS = 200;

    private final RoundTable rounds;
    private final StopTable stops;
    private final WorkTable work;
    private final Board board;
    private final Care care;
    private final Pumps pumps;
    private final Places places;
    private final People people;
    private final Clock clock;

    Rounds(
            RoundTable rounds,
            StopTable stops,
            WorkTable work,
            Board board,
            Care care,
            Pumps pumps,
            Places places,
            People people,
            Clock clock) {
        this.rounds = rounds;
        this.stops = stops;
        this.work = work;
        this.board = board;
        this.care = care;
        this.pumps = pumps;
        this.places = places;
        this.people = people;
        this.clock = clock;
    }

    /**
     * Plans a round and gives its id; all of its tasks or none.
     *
     * @throws TasksChanged when some of the tasks are no longer as they were chosen
     */
    public long plan(RoundDraft draft, Person by) {
        check(draft);
        if (draft.tasks().size() + draft.unitIds().size() > MOST_STOPS) {
            throw Refused.because("", "rounds.tooMany", MOST_STOPS);
        }
        asChosen(draft.tasks());
        draft.unitIds().forEach(pumps::unit);
        long id = rounds.insert(draft, by, clock.instant());
        stops.add(id, draft.tasks().stream().map(Chosen::taskId).toList(), draft.unitIds());
        people.note(by, "round planned", "round:" + id, draft.name().strip());
        return id;
    }

    /** Changes name, day and person, unless somebody did since the given version; the stops stay. */
    public void change(long id, int version, RoundDraft draft, Person by) {
        Round round = kept(id);
        check(draft);
        if (round.version() != version || !rounds.change(id, version, draft)) {
            throw new Stale("round", id);
        }
        people.note(by, "round changed", "round:" + id, draft.name().strip());
    }

    /** Gives a round up before it was gone: it leaves the lists, what was noted on it stays. */
    public void withdraw(long id, Person by) {
        Round round = kept(id);
        rounds.withdraw(id, by, clock.instant());
        people.note(by, "round given up", "round:" + id, round.name());
    }

    /** Adds tasks and pumps to look at at the end; those that are on it already stay where they are. */
    public void add(long id, Collection<Long> taskIds, Collection<Long> unitIds, Person by) {
        Round round = kept(id);
        if (round.stops().size() + taskIds.size() + unitIds.size() > MOST_STOPS) {
            throw Refused.because("", "rounds.tooMany", MOST_STOPS);
        }
        asChosen(taskIds.stream().map(Chosen::task).toList());
        unitIds.forEach(pumps::unit);
        stops.add(id, taskIds, unitIds);
        people.note(by, "round filled", "round:" + id, taskIds.size() + unitIds.size() + " stops");
    }

    /** Takes a stop off a round; what was noted of it stays on record. */
    public void remove(long id, long stopId, Person by) {
        Round round = kept(id);
        Stop gone = stopOf(round, stopId);
        stops.remove(stopId);
        stops.order(
                ids(round.stops().stream().filter(stop -> stop.id() != stopId).toList()));
        people.note(by, "stop taken off", "round:" + id, gone.tag());
    }

    /** Moves a stop to a place, from 1; a place beyond the ends is the first or the last. */
    public void move(long id, long stopId, int place, Person by) {
        Round round = kept(id);
        Stop moved = stopOf(round, stopId);
        List<Long> order = new ArrayList<>(ids(round.stops()));
        order.remove(Long.valueOf(moved.id()));
        order.add(Math.min(Math.max(place, 1), order.size() + 1) - 1, moved.id());
        stops.order(order);
    }

    private static List<Long> ids(List<Stop> stops) {
        return stops.stream().map(Stop::id).toList();
    }

    /** Says of a pump to look at that somebody looked; saying so again changes nothing. */
    public void seen(long id, long stopId, Person by) {
        Stop stop = stopOf(kept(id), stopId);
        if (stop.taskId() != null) {
            throw Refused.because("", "rounds.seen.task", stop.tag());
        }
        stops.seen(stopId, by, clock.instant());
        people.note(by, "pump looked at", "unit:" + stop.unitId(), null);
    }

    /**
     * Notes that one could not get in at a stop, and gives the note's id; the stop stays left.
     *
     * @param at when; null is now
     */
    public long noAccess(
            long id, long stopId, NoAccessWhy why, @Nullable String note, @Nullable Instant at, Person by) {
        Stop stop = stopOf(round(id), stopId);
        Instant now = clock.instant();
        List<Refused.Wrong> wrongs = new ArrayList<>();
        if (stop.state() == StopState.DONE) {
            wrongs.add(Refused.Wrong.at("", "rounds.noAccess.done", stop.tag()));
        }
        if (at != null && at.isAfter(now.plus(CLOCKS_MAY_DIFFER))) {
            wrongs.add(Refused.Wrong.at("at", "rounds.noAccess.future"));
        }
        if (note != null && note.length() > LONGEST_NOTE) {
            wrongs.add(Refused.Wrong.at("note", "rounds.long", LONGEST_NOTE));
        }
        if (why == NoAccessWhy.OTHER && (note == null || note.isBlank())) {
            wrongs.add(Refused.Wrong.at("note", "rounds.noAccess.say"));
        }
        Refused.ifAny(wrongs);
        long noted = rounds.insertNoAccess(stop, at == null ? now : at, why, note, by, now);
        people.note(by, "no access", "unit:" + stop.unitId(), why + (note == null ? "" : " " + note));
        return noted;
    }

    /** All times that nobody could get in at a unit, latest first. */
    @Transactional(readOnly = true)
    public List<NoAccess> noAccessOf(long unitId) {
        return rounds.noAccessOf(unitId);
    }

    @Transactional(readOnly = true)
    public Round round(long id) {
        return rounds.round(id).orElseThrow(() -> new NotFound("round", id));
    }

    /** The rounds of a person from that day on, by day. */
    @Transactional(readOnly = true)
    public List<Round> roundsOf(long personId, LocalDate from) {
        return rounds.rounds(personId, from);
    }

    /** The rounds of a person that are today's by the calendar of their first stop, those that are all done too. */
    @Transactional(readOnly = true)
    public List<Round> todaysRounds(long personId) {
        return roundsOf(personId, LocalDate.now(clock).minusDays(1)).stream()
                .filter(round -> round.day().equals(LocalDate.now(clock.withZone(round.zone()))))
                .toList();
    }

    /** Everybody's rounds, and those that nobody goes yet, from that day on, by day. */
    @Transactional(readOnly = true)
    public List<Round> rounds(LocalDate from) {
        return rounds.rounds(null, from);
    }

    /** The last rounds before that day, the latest first. */
    @Transactional(readOnly = true)
    public List<Round> before(LocalDate day, int most) {
        return rounds.before(day, most);
    }

    /** The rounds of earlier days on which something is left that stands on no round since, the latest first. */
    @Transactional(readOnly = true)
    public List<Round> leftOver(LocalDate today, int most) {
        return rounds.leftBefore(today, most).stream()
                .filter(round -> round.stops().stream().anyMatch(stop -> stop.leftOver(round.day())))
                .toList();
    }

    /** The open tasks left to do, one page, by site and week. */
    @Transactional(readOnly = true)
    public List<WorkLine> work(WorkQuery query) {
        return work.left(query);
    }

    @Transactional(readOnly = true)
    public int countWork(WorkQuery query) {
        return work.count(query);
    }

    /**
     * Gives tasks to a person, or takes them from whoever has them when {@code personId} is null: all or none.
     *
     * @throws TasksChanged when some of them are no longer as they were chosen
     */
    public void assign(List<Chosen> tasks, @Nullable Long personId, Person by) {
        if (tasks.isEmpty()) {
            throw Refused.because("", "rounds.nothingChosen");
        }
        checkPerson(personId);
        asChosen(tasks);
        care.assign(tasks.stream().map(Chosen::taskId).toList(), personId, by);
    }

    /**
     * Holds these tasks until the end of the transaction.
     *
     * @throws TasksChanged when some of them are no longer as they were chosen
     */
    public void asChosen(List<Chosen> tasks) {
        board.holdOffPlanning();
        Map<Long, RoundTable.NowTask> now = rounds
                .lockedTasks(tasks.stream().map(Chosen::taskId).toList())
                .stream()
                .collect(Collectors.toMap(RoundTable.NowTask::id, Function.identity()));
        List<ChangedTask> changed = new ArrayList<>();
        for (Chosen chosen : tasks) {
            RoundTable.NowTask task = now.get(chosen.taskId());
            if (task == null) {
                throw new NotFound("task", chosen.taskId());
            }
            ChangedTask how = task.changedSince(chosen);
            if (how != null) {
                changed.add(how);
            }
        }
        if (!changed.isEmpty()) {
            throw new TasksChanged(changed);
        }
    }

    /** These tasks as they stand now, in the order chosen, of those that are still open. */
    @Transactional(readOnly = true)
    public List<WorkLine> chosenWork(List<Chosen> chosen) {
        return work.among(chosen.stream().map(Chosen::taskId).toList());
    }

    /** The open tasks of a unit whose days have begun by that day. */
    @Transactional(readOnly = true)
    public List<Long> dueTasks(long unitId, LocalDate day) {
        return care.tasksOf(unitId).stream()
                .filter(task -> task.openOn(day))
                .map(Task::id)
                .toList();
    }

    @Transactional(readOnly = true)
    public Site site(long siteId) {
        return places.site(siteId);
    }

    @Transactional(readOnly = true)
    public AccessNote access(long siteId) {
        places.site(siteId);
        return rounds.access(siteId);
    }

    /** Writes how one gets in at a site, unless somebody did since the given version. */
    public void writeAccess(long siteId, int version, String note, Person by) {
        places.site(siteId);
        if (note.length() > LONGEST_NOTE) {
            throw Refused.because("note", "rounds.long", LONGEST_NOTE);
        }
        if (!rounds.writeAccess(siteId, version, note.strip(), by, clock.instant())) {
            throw new Stale("access note", siteId);
        }
        people.note(by, "access note written", "site:" + siteId, null);
    }

    private Round kept(long id) {
        Round round = rounds.locked(id).orElseThrow(() -> new NotFound("round", id));
        if (round.withdrawn()) {
            throw Refused.because("", "rounds.withdrawn");
        }
        return round;
    }

    static Stop stopOf(Round round, long stopId) {
        return round.stops().stream()
                .filter(stop -> stop.id() == stopId)
                .findFirst()
                .orElseThrow(() -> new NotFound("stop", stopId));
    }

    private void check(RoundDraft draft) {
        List<Refused.Wrong> wrongs = new ArrayList<>();
        int length = draft.name().strip().length();
        if (length == 0 || length > LONGEST_NAME) {
            wrongs.add(Refused.Wrong.at("name", "rounds.name.shape", LONGEST_NAME));
        }
        if (draft.day() == null) {
            wrongs.add(Refused.Wrong.at("day", "rounds.day.missing"));
        } else if (draft.day().getYear() < 2000 || draft.day().getYear() > 2200) {
            wrongs.add(Refused.Wrong.at("day", "rounds.day.far"));
        }
        Refused.ifAny(wrongs);
        checkPerson(draft.personId());
    }

    private void checkPerson(@Nullable Long personId) {
        if (personId != null
                && people.everyone().stream().noneMatch(person -> person.id() == personId && person.active())) {
            throw Refused.because("person", "rounds.person.unknown");
        }
    }
}
