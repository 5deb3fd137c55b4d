package freshet.findings;

import freshet.people.NotAllowed;
import freshet.people.NotFound;
import freshet.people.People;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Stale;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
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
    private static final int LONGEST_NAME = 100;
    /** What is put off for longer is not put off. Common practice, no source. */
    private static final int MONTHS_AT_MOST = 12;

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

    /** Writes a finding that was made now and gives its id. */
    public long write(FindingDraft draft, Person by) {
        return write(draft, clock.instant(), by);
    }

    /** Writes a finding that was made then, or now at the latest, and gives its id. */
    public long write(FindingDraft draft, Instant foundAt, Person by) {
        List<Refused.Wrong> wrongs = new ArrayList<>();
        if (draft.severity() < 0 || draft.severity() > Finding.DANGER) {
            wrongs.add(Refused.Wrong.at("severity", "findings.severity.choose"));
        }
        checkWords(draft.what(), "what", wrongs);
        Refused.ifAny(wrongs);
        Instant now = clock.instant();
        long id = table.insert(draft, by, foundAt.isAfter(now) ? now : foundAt);
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

    /** The open findings about these units, in the order of writing. */
    @Transactional(readOnly = true)
    public List<Finding> openFindingsOf(Collection<Long> unitIds) {
        return table.open(unitIds);
    }

    /** Every open finding, worst first. */
    @Transactional(readOnly = true)
    public List<Finding> openFindings() {
        return table.open();
    }

    /** The severities that a finding had, latest change first. */
    @Transactional(readOnly = true)
    public List<SeverityChange> severitiesOf(long id) {
        return table.severities(id);
    }

    /** Every time that the work for a finding was put off, latest first. */
    @Transactional(readOnly = true)
    public List<Waiver> waiversOf(long id) {
        return table.waivers(id);
    }

    /**
     * Says how it failed, from what, and how bad it is. A change of severity needs a reason; it never goes below what the check that
     * made it holds, one from a check for competent persons is changed only by such a person, and only an owner lets a unit back to use
     * by it.
     *
     * @throws Stale when somebody changed or closed it meanwhile
     */
    public void judge(long id, int version, Judging judging, Person by) {
        Finding finding = finding(id);
        boolean changed = judging.severity() != finding.severity();
        if (changed) {
            Refused.ifAny(wrongSeverity(finding, judging, by));
        }
        if (!table.judge(id, version, judging)) {
            throw new Stale("finding", id);
        }
        if (changed) {
            table.insert(id, finding.severity(), judging, by, clock.instant());
        }
        String severities =
                changed ? ", " + finding.severity() + " to " + judging.severity() + ": " + judging.why() : "";
        people.note(
                by,
                "finding judged",
                "unit:" + finding.unitId(),
                "finding " + id + " " + judging.mode() + " " + judging.cause() + severities);
        events.publishEvent(new FindingChanged(finding.unitId(), id));
        if (judging.severity() > finding.severity()) {
            events.publishEvent(new FindingRaised(finding.unitId(), id, judging.severity()));
        }
    }

    private List<Refused.Wrong> wrongSeverity(Finding finding, Judging judging, Person by) {
        List<Refused.Wrong> wrongs = new ArrayList<>();
        int severity = judging.severity();
        int held = table.held(finding.id());
        boolean lower = severity < finding.severity();
        if (severity < 0 || severity > Finding.DANGER) {
            wrongs.add(Refused.Wrong.at("severity", "findings.severity.choose"));
        } else if (severity < held) {
            wrongs.add(Refused.Wrong.at("severity", "findings.severity.held", held));
        } else if (lower && finding.competence() != null && !by.competentFor(finding.competence())) {
            wrongs.add(Refused.Wrong.at("severity", "findings.severity.competent"));
        } else if (lower && finding.stopsUse() && severity < Finding.STOPS_USE && !by.owner()) {
            wrongs.add(Refused.Wrong.at("severity", "findings.severity.owner"));
        }
        checkWords(judging.why() == null ? "" : judging.why(), "why", wrongs);
        return wrongs;
    }

    /**
     * Puts the work for a finding off to the end of a day within a year; a danger never, and what stops use only by an owner. It still
     * counts in readiness.
     *
     * @throws Stale when somebody changed or closed it meanwhile
     */
    public void putOff(long id, int version, WaiverDraft draft, Person by) {
        Finding finding = finding(id);
        LocalDate today = LocalDate.ofInstant(clock.instant(), finding.zone());
        List<Refused.Wrong> wrongs = new ArrayList<>();
        if (finding.severity() >= Finding.DANGER) {
            wrongs.add(Refused.Wrong.at("", "findings.putOff.danger"));
        } else if (finding.stopsUse() && !by.owner()) {
            wrongs.add(Refused.Wrong.at("", "findings.putOff.owner"));
        }
        checkWords(draft.why() == null ? "" : draft.why(), "why", wrongs);
        if (draft.decidedBy() != null && draft.decidedBy().length() > LONGEST_NAME) {
            wrongs.add(Refused.Wrong.at("decidedBy", "findings.words.long", LONGEST_NAME));
        }
        LocalDate until = draft.until();
        if (until == null) {
            wrongs.add(Refused.Wrong.at("until", "findings.putOff.until.missing"));
        } else if (until.isBefore(today)) {
            wrongs.add(Refused.Wrong.at("until", "findings.putOff.until.past"));
        } else if (until.isAfter(today.plusMonths(MONTHS_AT_MOST))) {
            wrongs.add(Refused.Wrong.at("until", "findings.putOff.until.far", MONTHS_AT_MOST));
        }
        Refused.ifAny(wrongs);
        if (!table.putOff(id, version, finding.severity(), draft, by, clock.instant())) {
            throw new Stale("finding", id);
        }
        String decided = draft.decidedBy() == null ? "" : " by " + draft.decidedBy();
        people.note(
                by,
                "finding put off",
                "unit:" + finding.unitId(),
                "finding " + id + " until " + until + decided + ": " + draft.why());
        events.publishEvent(new FindingChanged(finding.unitId(), id));
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
