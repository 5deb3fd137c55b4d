package freshet.offline;

import freshet.care.Care;
import freshet.care.Task;
import freshet.care.Worksheet;
import freshet.checklists.CheckLine;
import freshet.fleet.Fleet;
import freshet.fleet.FleetQuery;
import freshet.people.Person;
import freshet.phrases.Phrases;
import freshet.places.Places;
import freshet.pumps.Pumps;
import freshet.pumps.Stand;
import freshet.pumps.Unit;
import freshet.readings.MeterKind;
import freshet.readings.MeterLog;
import freshet.readings.Readings;
import freshet.rounds.Rounds;
import freshet.rounds.Stop;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Gathers what goes along: the stops of rounds, the units of places, and the work that is open on them. */
@Component
class Packing {

    /** What one person works in a day and a phone takes down in a minute. */
    private static final int MOST_TASKS = 200;

    private final JdbcClient jdbc;
    private final Rounds rounds;
    private final Care care;
    private final Fleet fleet;
    private final Pumps pumps;
    private final Places places;
    private final Readings readings;
    private final Clock clock;

    Packing(
            JdbcClient jdbc,
            Rounds rounds,
            Care care,
            Fleet fleet,
            Pumps pumps,
            Places places,
            Readings readings,
            Clock clock) {
        this.jdbc = jdbc;
        this.rounds = rounds;
        this.care = care;
        this.fleet = fleet;
        this.pumps = pumps;
        this.places = places;
        this.readings = readings;
        this.clock = clock;
    }

    Bundle bundle(Wanted wanted, Person me) {
        Set<Long> taskIds = new LinkedHashSet<>();
        Set<Long> unitIds = new LinkedHashSet<>();
        for (long round : wanted.rounds()) {
            for (Stop stop : rounds.round(round).left()) {
                unitIds.add(stop.unitId());
                if (stop.taskId() != null) {
                    taskIds.add(stop.taskId());
                }
            }
        }
        if (wanted.mine()) {
            taskIds.addAll(assigned(me.id()));
        }
        Set<Long> sites = places.sites(wanted.sites()).keySet();
        care.openTasksAt(sites).stream()
                .filter(task -> task.openOn(places.site(task.siteId()).today(clock)))
                .map(Task::id)
                .forEach(taskIds::add);
        sites.forEach(site -> fleet.find(FleetQuery.all().at(site).page(0, FleetQuery.LARGEST_PAGE))
                .rows()
                .forEach(row -> unitIds.add(row.unitId())));
        List<Task> tasks = taskIds.stream()
                .map(care::task)
                .filter(Task::open)
                .limit(MOST_TASKS)
                .toList();
        tasks.forEach(task -> unitIds.add(task.unitId()));
        return new Bundle(
                me.id(),
                me.fullName(),
                clock.instant(),
                pumps.units(unitIds).stream()
                        .sorted(Comparator.comparing(Unit::tag))
                        .map(this::unit)
                        .toList(),
                tasks.stream().map(task -> task(task, me)).toList());
    }

    private List<Long> assigned(long personId) {
        return jdbc.sql("select id from task where assigned_to = ? and state = 'OPEN' order by due_on, id")
                .param(personId)
                .query(Long.class)
                .list();
    }

    private Bundle.UnitRow unit(Unit unit) {
        String page = "/pumps/" + unit.id();
        return new Bundle.UnitRow(
                unit.id(),
                unit.tag(),
                unit.model().name(),
                place(unit.stand()),
                standing(unit.stand()),
                meters(unit.id()),
                List.of("/take-along/units/" + unit.id(), page + "/reading", page + "/flow-test", page + "/finding"));
    }

    static String place(Stand stand) {
        List<String> parts = new ArrayList<>();
        Stream.of(stand.siteName(), stand.positionName(), stand.spot())
                .filter(part -> part != null && !part.isBlank())
                .forEach(parts::add);
        return String.join(", ", parts);
    }

    /** Where a unit stands, to see whether it was moved. */
    static String standing(Stand stand) {
        return stand.siteId() + ":" + (stand.positionId() == null ? "" : stand.positionId());
    }

    /** What each kind of meter showed last, to see whether it moved on. */
    Map<String, String> meters(long unitId) {
        Map<String, String> last = new TreeMap<>();
        for (MeterKind kind : MeterKind.values()) {
            MeterLog.Line line = readings.log(unitId, kind).last();
            last.put(
                    kind.name(),
                    line == null ? "" : line.at() + " " + line.value().toPlainString());
        }
        return last;
    }

    private Bundle.TaskRow task(Task task, Person me) {
        Worksheet sheet = care.worksheet(task.id());
        return new Bundle.TaskRow(
                task.id(),
                task.unitId(),
                task.tag(),
                Phrases.said(me.locale(), task.title()),
                place(sheet.unit().stand()),
                task.dueOn(),
                task.minutes(),
                sheet.checklist().versionId(),
                "/tasks/" + task.id(),
                sheet.checklist().lines().stream().map(line -> line(line, me)).toList());
    }

    private static Bundle.LineRow line(CheckLine line, Person me) {
        return new Bundle.LineRow(
                "line[c" + line.id() + "]",
                Phrases.said(me.locale(), line.question()),
                line.required(),
                line.safety(),
                line.competence() != null && !me.competentFor(line.competence()),
                line.asksInstrument(),
                line.failSeverity());
    }
}
