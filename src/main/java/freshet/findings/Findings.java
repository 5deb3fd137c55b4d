package freshet.findings;

import freshet.people.NotAllowed;
import freshet.people.NotFound;
import freshet.people.People;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Stale;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The door to the findings. */
@Service
@Transactional
public class Findings {

    private static final int LONGEST = 2000;

    private final FindingTable table;
    private final HoldTable holds;
    private final People people;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    Findings(FindingTable table, HoldTable holds, People people, ApplicationEventPublisher events, Clock clock) {
        this.table = table;
        this.holds = holds;
        this.people = people;
        this.events = events;
        this.clock = clock;
    }

    @Transactional(readOnly = true)
    public Finding finding(long id) {
        return table.finding(id).orElseThrow(() -> new NotFound("finding", id));
    }

    /** All findings about a unit: open ones first, worst first, then the closed ones, latest first. */
    @Transactional(readOnly = true)
    public List<Finding> findingsOf(long unitId) {
        return table.ofUnit(unitId);
    }

    /** The findings of a severity at least about these units, open and closed, each unit's oldest first; units without any are not in it. */
    @Transactional(readOnly = true)
    public Map<Long, List<Finding>> findingsOf(Collection<Long> unitIds, int leastSeverity) {
        return table.ofUnits(unitIds, leastSeverity).stream().collect(Collectors.groupingBy(Finding::unitId));
    }

    /** The findings that a signed record made. */
    @Transactional(readOnly = true)
    public List<Finding> findingsOfRecord(long recordId) {
        return table.ofRecord(recordId);
    }

    /** Writes a finding and gives its id. */
    public long write(FindingDraft draft, Person by) {
        List<Refused.Wrong> wrongs = new ArrayList<>();
        if (draft.severity() < 0 || draft.severity() > Finding.DANGER) {
            wrongs.add(Refused.Wrong.at("severity", "findings.severity.choose"));
        }
        checkWords(draft.what(), "what", wrongs);
        Refused.ifAny(wrongs);
        long id = table.insert(draft, by, clock.instant());
        people.note(
                by,
                "finding written",
                "unit:" + draft.unitId(),
                draft.severity() + " " + draft.what().strip());
        events.publishEvent(new FindingOpened(draft.unitId(), id, draft.severity()));
        return id;
    }

    /**
     * Closes a finding with words on what was done. One that came from a check for competent persons is closed only by such a person.
     */
    public void close(long id, int version, String how, Person by) {
        Finding finding = finding(id);
        if (finding.competence() != null && !by.competentFor(finding.competence())) {
            throw new NotAllowed("closing finding " + id + " needs " + finding.competence());
        }
        List<Refused.Wrong> wrongs = new ArrayList<>();
        checkWords(how, "how", wrongs);
        Refused.ifAny(wrongs);
        if (!table.close(id, version, how.strip(), by, clock.instant())) {
            throw new Stale("finding", id);
        }
        people.note(by, "finding closed", "unit:" + finding.unitId(), how.strip());
        events.publishEvent(new FindingClosed(finding.unitId(), id, finding.severity()));
    }

    /** Every hold of a unit: open ones first, then those that were released, latest first. */
    @Transactional(readOnly = true)
    public List<Hold> holdsOf(long unitId) {
        return holds.ofUnit(unitId);
    }

    /** The open holds of these units, each unit's oldest first; units without any are not in it. */
    @Transactional(readOnly = true)
    public Map<Long, List<Hold>> openHoldsOf(Collection<Long> unitIds) {
        return holds.open(unitIds).stream().collect(Collectors.groupingBy(Hold::unitId));
    }

    /** Every open hold, by tag. */
    @Transactional(readOnly = true)
    public List<Hold> openHolds() {
        return holds.open();
    }

    /**
     * Holds a unit until a signed record proves it, and gives the id of the hold. One that is held so already stays held by the first
     * hold, whose id it gives; the second reason stands in the trail only.
     */
    public long hold(long unitId, HoldKind kind, Why why, Person by) {
        if (why.code() == null) {
            List<Refused.Wrong> wrongs = new ArrayList<>();
            checkWords(String.valueOf(why.words()), "why", wrongs);
            Refused.ifAny(wrongs);
        }
        people.note(by, "unit held", "unit:" + unitId, kind + " " + why);
        Optional<Long> id = holds.insert(unitId, kind, why, by, clock.instant());
        id.ifPresent(it -> events.publishEvent(new UnitHeld(unitId, it, kind)));
        return id.orElseGet(() -> openHold(unitId, kind).id());
    }

    private Hold openHold(long unitId, HoldKind kind) {
        return holds.ofUnit(unitId).stream()
                .filter(hold -> hold.open() && hold.kind() == kind)
                .findFirst()
                .orElseThrow(() -> new NotFound("open hold of unit", unitId));
    }

    /**
     * Releases a hold by the signed record that proves the unit since. Only the room that judged the record asks for this; no page does.
     *
     * @throws Stale when the hold is released already, or the record is another unit's or older than the hold
     */
    public void release(Hold hold, long recordId, Person by) {
        if (!holds.release(hold.id(), recordId, by, clock.instant())) {
            throw new Stale("hold", hold.id());
        }
        people.note(by, "hold released", "unit:" + hold.unitId(), hold.kind() + " by record " + recordId);
        events.publishEvent(new HoldReleased(hold.unitId(), hold.id(), recordId));
    }

    private static void checkWords(String words, String field, List<Refused.Wrong> wrongs) {
        if (words.isBlank()) {
            wrongs.add(Refused.Wrong.at(field, "findings." + field + ".missing"));
        } else if (words.strip().length() > LONGEST) {
            wrongs.add(Refused.Wrong.at(field, "findings.words.long", LONGEST));
        }
    }
}
