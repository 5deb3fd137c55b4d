package freshet.care;

import static freshet.people.Refused.Wrong.at;

import freshet.board.Why;
import freshet.checklists.CheckLine;
import freshet.checklists.Checklist;
import freshet.checklists.Checklists;
import freshet.checklists.LimitWords;
import freshet.checklists.Phase;
import freshet.findings.FindingDraft;
import freshet.findings.Findings;
import freshet.people.Competence;
import freshet.people.NotFound;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Refused.Wrong;
import freshet.people.Stale;
import freshet.people.Typed;
import freshet.photos.Photos;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;

/** Where tasks are answered and signed. */
@Component
class Desk {

    static final int LONGEST_INSTRUMENT = 120;

    private final TaskTable tasks;
    private final RecordTable records;
    private final Checklists checklists;
    private final Findings findings;
    private final Pumps pumps;
    private final FollowUps followUps;
    private final ReTests reTests;
    private final PhotoTable photos;
    private final Photos kept;
    private final Clock clock;
    private final MessageSource messages;

    Desk(
            TaskTable tasks,
            RecordTable records,
            Checklists checklists,
            Findings findings,
            Pumps pumps,
            FollowUps followUps,
            ReTests reTests,
            PhotoTable photos,
            Photos kept,
            Clock clock,
            MessageSource messages) {
        this.tasks = tasks;
        this.records = records;
        this.checklists = checklists;
        this.findings = findings;
        this.pumps = pumps;
        this.followUps = followUps;
        this.photos = photos;
        this.kept = kept;
        this.reTests = reTests;
        this.clock = clock;
        this.messages = messages;
    }

    Worksheet worksheet(Task task) {
        return new Worksheet(
                task,
                pumps.unit(task.unitId()),
                checklistOf(task, List.of()),
                tasks.answers(task.id()),
                tasks.notes(task.id()));
    }

    /** A task that was begun stays with the version it was begun with; before, it is the one whose lines are answered, else the newest. */
    Checklist checklistOf(Task task, List<Long> lineIds) {
        Optional<Checklist> begun = tasks.begunVersion(task.id()).map(checklists::version);
        Optional<Checklist> shown = checklists.versionOfLines(lineIds);
        if (begun.isPresent() && shown.isPresent() && !begun.equals(shown)) {
            throw new Stale("task", task.id());
        }
        return begun.or(() -> shown.filter(its -> its.id() == task.checklistId()))
                .orElseGet(() -> checklists.checklist(task.checklistId()));
    }

    /** Keeps what was typed as it was typed; lines that are not this person's to answer are passed over when they are empty. */
    void save(long taskId, int version, List<Answer> answers, TaskNotes notes, Person by) {
        Task task = openTask(taskId, version);
        Checklist checklist = checklistOf(task, lineIds(answers));
        Map<Long, SavedAnswer> saved = tasks.answers(taskId);
        for (Answer answer : byLine(checklist, answers).values()) {
            CheckLine line = checklist.line(answer.lineId());
            if (Judgement.locked(line, by)) {
                refuseIfAnswered(line, answer);
            } else if (!answer.empty()) {
                tasks.keep(taskId, answer, by.id(), clock.instant());
            } else if (saved.containsKey(line.id())) {
                tasks.drop(taskId, line.id());
            }
        }
        tasks.begun(taskId, checklist.versionId(), notes, clock.instant());
        remember(notes.instrument(), by);
    }

    private static List<Long> lineIds(List<Answer> answers) {
        return answers.stream().map(Answer::lineId).toList();
    }

    private void remember(@Nullable String instrument, Person by) {
        String text = Typed.text(instrument);
        if (text != null) {
            tasks.takeInHand(by.id(), text);
        }
    }

    private static void refuseIfAnswered(CheckLine line, Answer answer) {
        if (!answer.empty()) {
            throw Refused.because(Judgement.field(line, "answer"), "care.line.notYours", line.competence());
        }
    }

    /** Signs the task and gives the id of its record. */
    long sign(long taskId, SignOff signOff, Person by) {
        Task task = openTask(taskId, signOff.version());
        Unit unit = pumps.unit(task.unitId());
        Checklist checklist = checklistOf(task, lineIds(signOff.answers()));
        String instrument =
                Typed.text(signOff.instrument() == null ? tasks.notes(taskId).instrument() : signOff.instrument());
        Judgement judgement = Judgement.of(
                checklist, unit.model().ratings(), by, byLine(checklist, signOff.answers()), line -> instrument);
        Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
        WorkTimes times = WorkTimes.of(task, signOff, now);
        List<Wrong> wrongs = new ArrayList<>(judgement.wrongs());
        wrongs.addAll(times.wrongs(records.lastSigned(unit.id())));
        wrongs.addAll(notForThisPerson(task, checklist, by));
        if (instrument != null && instrument.length() > LONGEST_INSTRUMENT) {
            wrongs.add(at("instrument", "care.instrument.long", LONGEST_INSTRUMENT));
        }
        Refused.ifAny(wrongs);
        List<RecordPhoto> shown =
                photos.ofTask(taskId).stream().map(RecordPhoto::of).toList();
        long recordId = records.insert(new ServiceRecord(
                0,
                null,
                null,
                taskId,
                unit.id(),
                checklist.versionId(),
                task.title(),
                unit.tag(),
                unit.serial(),
                place(unit),
                task.zone(),
                times.started(),
                times.ended(),
                now,
                by.id(),
                by.fullName(),
                null,
                Typed.text(signOff.note()),
                "",
                judgement.recordLines(LimitWords.of(messages, by)),
                shown));
        remember(instrument, by);
        for (Judgement.Line line : judgement.findings()) {
            long findingId = findings.write(draft(unit, recordId, line), by);
            shown.stream()
                    .filter(photo ->
                            Objects.equals(photo.place().lineId(), line.check().id()))
                    .forEach(photo -> kept.hang("finding:" + findingId, photo.photoId(), null, by));
        }
        tasks.signed(task, times.started());
        Why left = Why.of("left", by.fullName(), task.title());
        if (judgement.left().contains(Competence.ELECTRICAL)) {
            followUps.electricalTest(unit, recordId, left);
        }
        if (judgement.left().stream().anyMatch(competence -> competence != Competence.ELECTRICAL)) {
            followUps.again(unit, checklist, recordId, left);
        }
        reTests.afterSigning(unit, recordId, by);
        return recordId;
    }

    private Task openTask(long taskId, int version) {
        Task task = openTask(taskId);
        if (task.version() != version) {
            throw new Stale("task", taskId);
        }
        return task;
    }

    /** A task to be worked on; nobody else changes it until the end of the transaction. */
    Task openTask(long taskId) {
        Task task = tasks.locked(taskId).orElseThrow(() -> new NotFound("task", taskId));
        if (task.recordId() != null) {
            throw new AlreadySigned(taskId, task.recordId());
        }
        if (!task.open()) {
            throw Refused.because("", "care.task.withdrawn");
        }
        return task;
    }

    static Map<Long, Answer> byLine(Checklist checklist, List<Answer> answers) {
        Map<Long, Answer> byLine = new LinkedHashMap<>();
        answers.forEach(answer -> byLine.put(checklist.line(answer.lineId()).id(), answer));
        return byLine;
    }

    /** What a competent person measured is signed by one, and a task that is all theirs too. */
    private List<Wrong> notForThisPerson(Task task, Checklist checklist, Person by) {
        List<CheckLine> locked = checklist.lines().stream()
                .filter(line -> Judgement.locked(line, by))
                .toList();
        if (locked.isEmpty()) {
            return List.of();
        }
        if (checklist.phase() == Phase.ELECTRICAL) {
            return List.of(at("", "care.sign.needs", locked.get(0).competence()));
        }
        Map<Long, SavedAnswer> saved = tasks.answers(task.id());
        return locked.stream()
                .map(line -> saved.get(line.id()))
                .filter(answer -> answer != null)
                .findFirst()
                .map(answer -> at("", "care.sign.measuredBy", answer.answeredByName()))
                .stream()
                .toList();
    }

    static FindingDraft draft(Unit unit, long recordId, Judgement.Line line) {
        return new FindingDraft(
                unit.id(), recordId, line.check().id(), line.severity(), String.valueOf(line.finding()));
    }

    static String place(Unit unit) {
        List<String> parts = new ArrayList<>();
        for (String part : new @Nullable String[] {
            unit.stand().spot(), unit.stand().positionName(), unit.stand().siteName()
        }) {
            if (part != null && !part.isBlank()) {
                parts.add(part);
            }
        }
        return String.join(", ", parts);
    }
}
