package freshet.care;

import static freshet.people.Refused.Wrong.at;

import freshet.checklists.CheckLine;
import freshet.checklists.Checklist;
import freshet.checklists.Checklists;
import freshet.checklists.LimitWords;
import freshet.checklists.Verdict;
import freshet.findings.Findings;
import freshet.people.NotAllowed;
import freshet.people.NotFound;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Refused.Wrong;
import freshet.people.Stale;
import freshet.people.Typed;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;

/** Corrects a signed record by a new one that names it. */
@Component
class Corrections {

    private final RecordTable records;
    private final Checklists checklists;
    private final Findings findings;
    private final Pumps pumps;
    private final ReTests reTests;
    private final Clock clock;
    private final MessageSource messages;

    Corrections(
            RecordTable records,
            Checklists checklists,
            Findings findings,
            Pumps pumps,
            ReTests reTests,
            Clock clock,
            MessageSource messages) {
        this.records = records;
        this.checklists = checklists;
        this.findings = findings;
        this.pumps = pumps;
        this.reTests = reTests;
        this.clock = clock;
        this.messages = messages;
    }

    static boolean may(ServiceRecord record, Person person) {
        return person.owner() || record.signedBy() == person.id();
    }

    /** Whoever signed it or an owner corrects it; lines for competent persons stay as they were unless one corrects. */
    long correct(long recordId, Correction correction, Person by) {
        ServiceRecord old = records.record(recordId).orElseThrow(() -> new NotFound("record", recordId));
        if (!may(old, by)) {
            throw new NotAllowed("record " + recordId + " was signed by another");
        }
        if (!old.stands()) {
            throw new Stale("record", recordId);
        }
        Unit unit = pumps.unit(old.unitId());
        Checklist checklist = checklists.version(old.checklistVersionId());
        Map<Long, RecordLine> before =
                old.lines().stream().collect(Collectors.toMap(line -> (long) line.checkLineId(), Function.identity()));
        String instrument = Typed.text(correction.instrument());
        Judgement judgement = Judgement.of(
                checklist,
                unit.model().ratings(),
                by,
                Desk.byLine(checklist, correction.answers()),
                line -> correction.instrument() == null ? before.get(line.id()).instrument() : instrument);
        List<RecordLine> after = judgement.recordLines(LimitWords.of(messages, by)).stream()
                .map(line -> Judgement.locked(checklist.line(line.checkLineId()), by)
                        ? before.get(line.checkLineId())
                        : line)
                .toList();
        List<Wrong> wrongs = new ArrayList<>(withoutKnown(judgement.wrongs(), checklist, before));
        if (correction.why().isBlank()) {
            wrongs.add(at("why", "care.correction.why.missing"));
        } else if (wrongs.isEmpty() && after.equals(old.lines())) {
            wrongs.add(at("", "care.correction.same"));
        }
        if (instrument != null && instrument.length() > Desk.LONGEST_INSTRUMENT) {
            wrongs.add(at("instrument", "care.instrument.long", Desk.LONGEST_INSTRUMENT));
        }
        Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
        if (WorkTimes.setBack(old.signedAt(), now)) {
            wrongs.add(WorkTimes.before("", "care.time.beforeLast", now, old.signedAt(), old.zone()));
        }
        Refused.ifAny(wrongs);
        long id = records.insert(new ServiceRecord(
                0,
                old.id(),
                null,
                old.taskId(),
                old.unitId(),
                old.checklistVersionId(),
                old.title(),
                old.tag(),
                old.serial(),
                old.place(),
                old.zone(),
                old.startedAt(),
                old.endedAt(),
                now,
                by.id(),
                by.fullName(),
                correction.why().strip(),
                Typed.text(correction.note()),
                "",
                after,
                old.photos()));
        judgement.findings().forEach(line -> findings.write(Desk.draft(unit, id, line), by));
        reTests.afterSigning(unit, id, by);
        return id;
    }

    /** What failed before has its finding already, and what was left before may stay so. */
    private static List<Wrong> withoutKnown(List<Wrong> wrongs, Checklist checklist, Map<Long, RecordLine> before) {
        Set<Wrong> known = new HashSet<>();
        for (CheckLine line : checklist.lines()) {
            Verdict verdict = before.get(line.id()).verdict();
            if (verdict == Verdict.FAIL) {
                known.add(Judgement.noWords(line));
            } else if (verdict == Verdict.LEFT) {
                known.add(Judgement.noAnswer(line));
            }
        }
        return wrongs.stream().filter(wrong -> !known.contains(wrong)).toList();
    }

    /** The answers of a record as a form begins with. */
    static Map<Long, Answer> answers(ServiceRecord record, Checklist checklist, Person by) {
        return record.lines().stream()
                .filter(line -> !Judgement.locked(checklist.line(line.checkLineId()), by))
                .map(line ->
                        new Answer(line.checkLineId(), line.answer(), line.asLeft(), null, null, line.instrument()))
                .collect(Collectors.toMap(Answer::lineId, Function.identity()));
    }
}
