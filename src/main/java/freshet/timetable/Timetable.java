package freshet.timetable;

import freshet.people.NotFound;
import freshet.people.People;
import freshet.people.Person;
import freshet.places.Places;
import freshet.places.Site;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.quartz.JobDetail;
import org.quartz.JobKey;
import org.quartz.SchedulerException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The door to what runs by itself: when each run comes, how it went, and asking for it now. */
@Service
@Transactional
public class Timetable {

    private static final ZoneId UTC = ZoneId.of("UTC");

    private final Triggers triggers;
    private final RunTable table;
    private final Places places;
    private final People people;

    Timetable(Triggers triggers, RunTable table, Places places, People people) {
        this.triggers = triggers;
        this.table = table;
        this.places = places;
        this.people = people;
    }

    /**
     * Makes the times of all runs agree with what is declared and with the zones of the sites, and asks once more for each that failed
     * when it ran last; doing it again changes nothing.
     */
    public void drawUp() {
        Map<String, ZoneId> zones = zones();
        table.keepOnly(zones.keySet());
        try {
            triggers.agreeWith(zones.values());
            for (RunTable.Key failed : table.failed()) {
                if (known(failed.run(), failed.zone(), zones)) {
                    triggers.ask(failed.run(), failed.zone());
                }
            }
        } catch (SchedulerException failed) {
            throw new IllegalStateException("the timetable was not drawn up", failed);
        }
    }

    /** How many runs failed when they ran last. */
    @Transactional(readOnly = true)
    public int failed() {
        return table.failed().size();
    }

    /** Every run, by room and name, a local one once for each zone of our sites. */
    @Transactional(readOnly = true)
    public List<RunLine> lines() {
        Map<ZoneId, Long> sitesOf =
                places.sites().stream().collect(Collectors.groupingBy(Site::zone, Collectors.counting()));
        Map<String, ZoneId> zones = zones();
        ZoneId told = zones.size() == 1 ? zones.values().iterator().next() : UTC;
        Map<RunTable.Key, LastRun> lasts = table.all();
        List<RunLine> lines = new ArrayList<>();
        try {
            for (JobDetail run : triggers.runs()) {
                if (triggers.local(run.getKey())) {
                    for (ZoneId zone : zones.values()) {
                        int sites = Math.toIntExact(sitesOf.get(zone));
                        lines.add(line(run.getKey(), zone.getId(), zone, sites, lasts));
                    }
                } else {
                    lines.add(line(run.getKey(), "", told, 0, lasts));
                }
            }
        } catch (SchedulerException failed) {
            throw new IllegalStateException("the timetable was not read", failed);
        }
        return lines;
    }

    private RunLine line(JobKey run, String zone, ZoneId told, int sites, Map<RunTable.Key, LastRun> lasts)
            throws SchedulerException {
        return new RunLine(
                run.getGroup(),
                run.getName(),
                told,
                !zone.isEmpty(),
                sites,
                lasts.get(RunTable.Key.of(run, zone)),
                triggers.next(run, zone).orElse(null),
                triggers.waits(run, zone));
    }

    /**
     * Has a run begin as soon as a node is free; asked again before that, it is still once. {@code zone} names the zone of a local run and
     * is empty for any other.
     */
    public void runNow(String room, String name, String zone, Person by) {
        JobKey run = JobKey.jobKey(name, room);
        if (!known(run, zone, zones())) {
            throw new NotFound("run", room + "." + name + " " + zone);
        }
        try {
            triggers.ask(run, zone);
        } catch (SchedulerException failed) {
            throw new IllegalStateException("the run was not asked for", failed);
        }
        people.note(by, "run asked for", "run:" + room + "." + name, zone.isEmpty() ? null : zone);
    }

    private boolean known(JobKey run, String zone, Map<String, ZoneId> zones) {
        return triggers.runs().stream().anyMatch(each -> each.getKey().equals(run))
                && (triggers.local(run) ? zones.containsKey(zone) : zone.isEmpty());
    }

    private Map<String, ZoneId> zones() {
        Map<String, ZoneId> zones = new TreeMap<>();
        places.sites().forEach(site -> zones.put(site.zone().getId(), site.zone()));
        return zones;
    }
}
