package freshet.care;

import freshet.checklists.CheckLine;
import freshet.checklists.Checklist;
import freshet.checklists.Checklists;
import freshet.checklists.Effect;
import freshet.checklists.Phase;
import freshet.checklists.Verdict;
import freshet.findings.Finding;
import freshet.findings.Findings;
import freshet.findings.Hold;
import freshet.findings.HoldKind;
import freshet.people.Competence;
import freshet.people.Person;
import freshet.pumps.Unit;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;

/**
 * Ends the holds of a unit when signed records say that it is fit: a re-test that began after the hold was signed, in which no required line
 * failed and no required line was left, or what it left to a person competent for electrical work was signed in an electrical test
 * that failed in nothing; and no finding is open that stops use. A re-test is a checklist that proves; one after a repair; and, for a
 * unit kept apart after a hire, the check after hire. An electrical test alone releases nothing. A hold that a re-test did not end gets
 * another re-test to do, so that there is always a way back.
 */
@Component
class ReTests {

    private final Findings findings;
    private final RecordTable records;
    private final Checklists checklists;
    private final FollowUps followUps;

    ReTests(Findings findings, RecordTable records, Checklists checklists, FollowUps followUps) {
        this.findings = findings;
        this.records = records;
        this.checklists = checklists;
        this.followUps = followUps;
    }

    private record Signed(ServiceRecord record, Checklist checklist) {

        /** The required lines that came to this. */
        private Stream<CheckLine> required(Verdict verdict) {
            Map<Long, CheckLine> lines =
                    checklist.lines().stream().collect(Collectors.toMap(CheckLine::id, Function.identity()));
            return record.lines().stream()
                    .filter(line -> line.verdict() == verdict && line.checkLineId() != null)
                    .map(line -> lines.get(line.checkLineId()))
                    .filter(CheckLine::required);
        }

        boolean passed() {
            return required(Verdict.FAIL).findAny().isEmpty();
        }

        boolean whole() {
            return required(Verdict.LEFT).findAny().isEmpty();
        }

        boolean onlyElectricalLeft() {
            return required(Verdict.LEFT).allMatch(line -> line.competence() == Competence.ELECTRICAL);
        }

        boolean retests(HoldKind kind) {
            return checklist.effect() == Effect.PROVES
                    || checklist.phase() == Phase.AFTER_REPAIR
                    || kind == HoldKind.QUARANTINE && checklist.phase() == Phase.AFTER_HIRE;
        }
    }

    /** What follows for the unit's holds from a record that was just signed. */
    void afterSigning(Unit unit, long recordId, Person by) {
        List<Hold> open = open(unit);
        if (open.isEmpty()) {
            return;
        }
        List<Signed> signed = records.ofUnit(unit.id()).stream()
                .filter(ServiceRecord::stands)
                .map(record -> new Signed(record, checklists.version(record.checklistVersionId())))
                .toList();
        for (Hold hold : open) {
            if (!stopped(unit) && passed(hold, signed)) {
                findings.release(hold, recordId, by);
            } else {
                followUps.reTest(unit, hold);
            }
        }
    }

    private List<Hold> open(Unit unit) {
        return findings.holdsOf(unit.id()).stream().filter(Hold::open).toList();
    }

    private boolean stopped(Unit unit) {
        return findings.findingsOf(unit.id()).stream()
                .anyMatch(finding -> finding.open() && finding.severity() >= Finding.STOPS_USE);
    }

    private static boolean passed(Hold hold, List<Signed> all) {
        List<Signed> since = all.stream()
                .filter(signed -> !signed.record().startedAt().isBefore(hold.sinceMinute()))
                .filter(Signed::passed)
                .toList();
        boolean electrical =
                since.stream().anyMatch(signed -> signed.checklist().phase() == Phase.ELECTRICAL && signed.whole());
        return since.stream()
                .filter(signed -> signed.retests(hold.kind()))
                .anyMatch(signed -> signed.whole() || electrical && signed.onlyElectricalLeft());
    }
}
