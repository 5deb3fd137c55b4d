package freshet.offline;

import freshet.care.AlreadySigned;
import freshet.care.Care;
import freshet.care.SentTask;
import freshet.care.Task;
import freshet.care.Worksheet;
import freshet.checklists.Checklist;
import freshet.checklists.Checklists;
import freshet.findings.Findings;
import freshet.findings.SentFindings;
import freshet.people.NotFound;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Stale;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import freshet.readings.ReadingDraft;
import freshet.readings.Readings;
import freshet.readings.SentReadings;
import java.time.Clock;
import java.time.Instant;
import java.util.Map;
import org.springframework.stereotype.Component;

/** Where entries are handed in: each goes through the door it would have gone through online. */
@Component
class Counter {

    private final Care care;
    private final Checklists checklists;
    private final Readings readings;
    private final Findings findings;
    private final Pumps pumps;
    private final Packing packing;
    private final Clock clock;

    Counter(
            Care care,
            Checklists checklists,
            Readings readings,
            Findings findings,
            Pumps pumps,
            Packing packing,
            Clock clock) {
        this.care = care;
        this.checklists = checklists;
        this.readings = readings;
        this.findings = findings;
        this.pumps = pumps;
        this.packing = packing;
        this.clock = clock;
    }

    long unitOf(Entry entry) {
        return entry.kind() == Entry.Kind.TASK
                ? care.task(entry.target()).unitId()
                : pumps.unit(entry.target()).id();
    }

    /**
     * Takes an entry in and gives the address of what was made of it.
     *
     * @throws Refused for what would have been refused online too
     * @throws AtOdds when something happened meanwhile
     */
    String take(Entry entry, Person by) {
        Unit unit = pumps.unit(unitOf(entry));
        Instant done = entry.byServer(entry.doneAt(), clock.instant());
        if (unit.retired()) {
            throw new AtOdds(Conflict.Why.RETIRED);
        }
        if (entry.kind() == Entry.Kind.TASK) {
            return task(entry, unit, by, done);
        }
        if (moved(entry, unit) && !unit.stand().since().isAfter(done)) {
            throw new AtOdds(Conflict.Why.MOVED);
        }
        return record(entry, unit, by, done);
    }

    /** Takes it in wherever the unit stands. */
    String record(Entry entry, Unit unit, Person by, Instant done) {
        return switch (entry.kind()) {
            case TASK -> sign(entry, by, done);
            case READING -> reading(entry, unit, by, done);
            case FLOW_TEST ->
                "/flow-tests/" + readings.recordFlowTest(SentReadings.flowTest(entry.fields(), unit, by, done), by);
            case FINDING -> "/findings/" + findings.write(SentFindings.finding(entry.fields(), unit.id()), done, by);
        };
    }

    private static boolean moved(Entry entry, Unit unit) {
        return entry.known().stand() != null && !entry.known().stand().equals(Packing.standing(unit.stand()));
    }

    private String task(Entry entry, Unit unit, Person by, Instant done) {
        Task task = care.task(entry.target());
        if (task.recordId() == null && !task.open()) {
            throw new AtOdds(Conflict.Why.WITHDRAWN);
        }
        // a record says where it was done
        if (task.recordId() == null && moved(entry, unit)) {
            throw new AtOdds(Conflict.Why.MOVED);
        }
        return sign(entry, by, done);
    }

    private String sign(Entry entry, Person by, Instant done) {
        SentTask sent = new SentTask(entry.fields());
        Worksheet sheet = care.worksheet(entry.target());
        Instant begun = entry.begunAt() == null ? null : entry.byServer(entry.begunAt(), clock.instant());
        try {
            return "/records/"
                    + care.sign(
                            entry.target(),
                            sent.signOff(shown(sent, sheet), by, sheet.task().zone(), begun, done),
                            by);
        } catch (AlreadySigned signed) {
            throw new AtOdds(Conflict.Why.SIGNED);
        } catch (Stale changed) {
            throw new AtOdds(Conflict.Why.CHANGED);
        }
    }

    /** The version of the checklist that was taken along. */
    Checklist shown(SentTask sent, Worksheet sheet) {
        return sent.checklistVersion()
                .filter(version -> version != sheet.checklist().versionId())
                .map(version -> {
                    try {
                        return checklists.version(version);
                    } catch (NotFound none) {
                        return sheet.checklist();
                    }
                })
                .filter(checklist -> checklist.id() == sheet.checklist().id())
                .orElse(sheet.checklist());
    }

    private String reading(Entry entry, Unit unit, Person by, Instant done) {
        ReadingDraft draft = SentReadings.reading(entry.fields(), unit, by, done);
        try {
            readings.recordReading(draft, by);
        } catch (Refused refused) {
            Map<String, String> known = entry.known().meters();
            String kind = draft.kind().name();
            boolean movedOn = known != null
                    && known.containsKey(kind)
                    && !known.get(kind).equals(packing.meters(unit.id()).get(kind));
            if (movedOn) {
                throw new AtOdds(Conflict.Why.METER);
            }
            throw refused;
        }
        return "/pumps/" + unit.id() + "/readings";
    }
}
