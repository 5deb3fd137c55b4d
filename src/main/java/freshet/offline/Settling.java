package freshet.offline;

import freshet.care.Answer;
import freshet.care.Care;
import freshet.care.Correction;
import freshet.care.RecordLine;
import freshet.care.SentTask;
import freshet.care.ServiceRecord;
import freshet.care.Task;
import freshet.care.TaskNotes;
import freshet.care.Worksheet;
import freshet.checklists.CheckLine;
import freshet.checklists.Checklist;
import freshet.checklists.Checklists;
import freshet.checklists.NotAnAnswer;
import freshet.people.People;
import freshet.people.Person;
import freshet.people.Typed;
import freshet.pumps.Pumps;
import freshet.pumps.Ratings;
import freshet.pumps.Unit;
import freshet.readings.MeterLog;
import freshet.readings.ReadingDraft;
import freshet.readings.Readings;
import freshet.readings.SentReadings;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Adds what stood against something else, in the way that its kind of conflict allows. */
@Component
class Settling {

    private final Care care;
    private final Checklists checklists;
    private final Readings readings;
    private final Pumps pumps;
    private final People people;
    private final Counter counter;
    private final Clock clock;

    Settling(
            Care care,
            Checklists checklists,
            Readings readings,
            Pumps pumps,
            People people,
            Counter counter,
            Clock clock) {
        this.care = care;
        this.checklists = checklists;
        this.readings = readings;
        this.pumps = pumps;
        this.people = people;
        this.counter = counter;
        this.clock = clock;
    }

    /** Whether this person can add it: some of it has to be of whoever signed, or of an owner. */
    boolean mayAdd(Conflict conflict, Person by) {
        return switch (conflict.why()) {
            case RETIRED -> false;
            case SIGNED ->
                standing(conflict)
                        .map(record -> by.owner() || record.signedBy() == by.id())
                        .orElse(false);
            case WITHDRAWN -> instead(conflict).isPresent();
            case CHANGED -> care.task(conflict.entry().target()).open();
            case METER -> true;
            // nobody signs for another
            case MOVED -> conflict.entry().kind() != Entry.Kind.TASK || conflict.personId() == by.id();
        };
    }

    /** Adds it and gives the address of what was made of it. */
    String add(Conflict conflict, String why, Person by) {
        Person writer = people.person(conflict.personId());
        Entry entry = conflict.entry();
        Instant done = entry.byServer(entry.doneAt(), conflict.foundAt());
        return switch (conflict.why()) {
            case SIGNED -> correct(conflict, why, writer, by);
            case CHANGED -> put(conflict, care.task(entry.target()), writer, by);
            case WITHDRAWN -> put(conflict, instead(conflict).orElseThrow(), writer, by);
            case METER -> replace(conflict, why, done, writer, by);
            case MOVED -> counter.record(entry, pumps.unit(conflict.unitId()), writer, done);
            case RETIRED -> throw new IllegalStateException("nothing is added to a retired unit");
        };
    }

    Optional<ServiceRecord> standing(Conflict conflict) {
        return care.recordsOf(conflict.unitId()).stream()
                .filter(record -> record.taskId() == conflict.entry().target() && record.stands())
                .findFirst();
    }

    /** The open task of the same checklist that the unit has in place of a withdrawn one. */
    private Optional<Task> instead(Conflict conflict) {
        Task gone = care.task(conflict.entry().target());
        return care.tasksOf(conflict.unitId()).stream()
                .filter(task -> task.open() && task.checklistId() == gone.checklistId())
                .findFirst();
    }

    private String correct(Conflict conflict, String why, Person writer, Person by) {
        ServiceRecord record = standing(conflict).orElseThrow();
        SentTask sent = new SentTask(conflict.entry().fields());
        Checklist checklist = checklists.version(record.checklistVersionId());
        Map<Long, Answer> answers = new LinkedHashMap<>();
        // what was left empty stays as it was signed, unless it is for others to answer
        for (RecordLine line : record.lines()) {
            if (line.checkLineId() != null && mayAnswer(checklist.line(line.checkLineId()), by)) {
                answers.put(
                        line.checkLineId(),
                        new Answer(line.checkLineId(), line.answer(), line.asLeft(), null, null, line.instrument()));
            }
        }
        on(checklist, conflict, sent, writer, by).stream()
                .filter(answer -> answer.answer() != null || answer.asLeft() != null || answer.finding() != null)
                .forEach(answer -> answers.put(answer.lineId(), answer));
        return "/records/"
                + care.correct(
                        record.id(),
                        // each line says what it was measured with
                        new Correction(
                                List.copyOf(answers.values()), why, sent.notes().note(), ""),
                        by);
    }

    private String put(Conflict conflict, Task task, Person writer, Person by) {
        SentTask sent = new SentTask(conflict.entry().fields());
        Worksheet sheet = care.worksheet(task.id());
        TaskNotes typed = sent.notes();
        care.saveAnswers(
                task.id(),
                task.version(),
                on(sheet.checklist(), conflict, sent, writer, by),
                new TaskNotes(null, null, null, typed.note()),
                by);
        return "/tasks/" + task.id();
    }

    /** The answers on the lines of another version that ask the same, in the units that their writer meant, each with its instrument. */
    private List<Answer> on(Checklist checklist, Conflict conflict, SentTask sent, Person writer, Person by) {
        Checklist shown = counter.shown(sent, care.worksheet(conflict.entry().target()));
        Ratings ratings = pumps.unit(conflict.unitId()).model().ratings();
        List<Answer> answers = new ArrayList<>();
        for (Answer answer : sent.answers(shown)) {
            CheckLine line = shown.line(answer.lineId());
            checklist.lines().stream()
                    .filter(other -> other.origin() == line.origin())
                    .filter(other -> mayAnswer(other, by))
                    .findFirst()
                    .ifPresent(other -> answers.add(new Answer(
                            other.id(),
                            said(line, answer.answer(), writer, ratings),
                            said(line, answer.asLeft(), writer, ratings),
                            answer.finding(),
                            answer.severity(),
                            measuredWith(line, answer, sent.notes()))));
        }
        return answers;
    }

    /** What an answered line was measured with: its own, else what was named for the whole task. */
    static @Nullable String measuredWith(CheckLine line, Answer answer, TaskNotes beside) {
        if (!line.measured() || answer.answer() == null && answer.asLeft() == null) {
            return null;
        }
        return Typed.text(answer.instrument() == null ? beside.instrument() : answer.instrument());
    }

    private static boolean mayAnswer(CheckLine line, Person by) {
        return line.competence() == null || by.competentFor(line.competence());
    }

    private static @Nullable String said(CheckLine line, @Nullable String typed, Person writer, Ratings ratings) {
        try {
            return line.judge(typed, writer.unitSystem(), ratings).answer();
        } catch (NotAnAnswer asTyped) {
            return typed;
        }
    }

    /** Takes back what was read there since and stands in the way, with the reason, and writes this in its place. */
    private String replace(Conflict conflict, String why, Instant done, Person writer, Person by) {
        Unit unit = pumps.unit(conflict.unitId());
        ReadingDraft draft = SentReadings.reading(conflict.entry().fields(), unit, writer, done);
        for (MeterLog.Line line : since(conflict, draft)) {
            readings.withdrawReading(unit.id(), Objects.requireNonNull(line.readingId()), why, by);
        }
        readings.recordReading(draft, writer);
        return "/pumps/" + unit.id() + "/readings";
    }

    /** What was read on the meter since the phone took it along, newest first. */
    List<MeterLog.Line> since(Conflict conflict, ReadingDraft draft) {
        String known = Objects.requireNonNull(conflict.entry().known().meters())
                .getOrDefault(draft.kind().name(), "");
        Instant last = known.isEmpty() ? Instant.MIN : Instant.parse(known.substring(0, known.indexOf(' ')));
        List<MeterLog.Line> since = new ArrayList<>(readings.log(conflict.unitId(), draft.kind()).lines().stream()
                .filter(line -> line.what() == MeterLog.What.READ && line.at().isAfter(last))
                .toList());
        Collections.reverse(since);
        return since;
    }
}
