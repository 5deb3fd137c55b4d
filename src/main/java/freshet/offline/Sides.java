package freshet.offline;

import freshet.care.Answer;
import freshet.care.Care;
import freshet.care.RecordLine;
import freshet.care.SavedAnswer;
import freshet.care.SentTask;
import freshet.care.ServiceRecord;
import freshet.care.Task;
import freshet.care.TaskNotes;
import freshet.care.Worksheet;
import freshet.checklists.CheckLine;
import freshet.checklists.Checklist;
import freshet.checklists.Checklists;
import freshet.people.People;
import freshet.people.Person;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import freshet.readings.MeterLog;
import freshet.readings.SentReadings;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Lays both sides of a conflict beside each other. */
@Component
class Sides {

    private static final Pattern PIECE = Pattern.compile("pieces\\[(\\d{1,2})]\\.(\\w+)");
    private static final Pattern LAP = Pattern.compile("lap(\\d)");

    private final Care care;
    private final Checklists checklists;
    private final Pumps pumps;
    private final People people;
    private final Counter counter;
    private final Settling settling;

    Sides(Care care, Checklists checklists, Pumps pumps, People people, Counter counter, Settling settling) {
        this.care = care;
        this.checklists = checklists;
        this.pumps = pumps;
        this.people = people;
        this.counter = counter;
        this.settling = settling;
    }

    Beside of(Conflict conflict, boolean mayAdd) {
        Unit unit = pumps.unit(conflict.unitId());
        Instant done = conflict.entry().byServer(conflict.entry().doneAt(), conflict.foundAt());
        String place = Packing.place(unit.stand());
        String address = "/pumps/" + unit.id();
        if (conflict.entry().kind() != Entry.Kind.TASK) {
            List<MeterLog.Line> read = conflict.why() == Conflict.Why.METER ? read(conflict, unit, done) : List.of();
            return new Beside(
                    done, mayAdd, null, unit.stand().since(), null, address, place, read, typed(conflict.entry()));
        }
        Worksheet sheet = care.worksheet(conflict.entry().target());
        Task task = sheet.task();
        ServiceRecord record = settling.standing(conflict).orElse(null);
        if (record != null) {
            return new Beside(
                    done,
                    mayAdd,
                    record.signedName(),
                    record.signedAt(),
                    null,
                    "/records/" + record.id(),
                    place,
                    List.of(),
                    rows(conflict, sheet, signed(record)));
        }
        SavedAnswer last = sheet.saved().values().stream()
                .max(Comparator.comparing(SavedAnswer::answeredAt))
                .orElse(null);
        return new Beside(
                done,
                mayAdd,
                last == null ? null : last.answeredByName(),
                last == null ? unit.stand().since() : last.answeredAt(),
                task.stateWhy(),
                "/tasks/" + task.id(),
                place,
                List.of(),
                rows(conflict, sheet, saved(sheet)));
    }

    private List<MeterLog.Line> read(Conflict conflict, Unit unit, Instant done) {
        Person writer = people.person(conflict.personId());
        return settling.since(conflict, SentReadings.reading(conflict.entry().fields(), unit, writer, done));
    }

    /** By the line's origin, which is the same through all versions. */
    private Map<Long, String> signed(ServiceRecord record) {
        Checklist checklist = checklists.version(record.checklistVersionId());
        Map<Long, String> said = new HashMap<>();
        for (RecordLine line : record.lines()) {
            if (line.checkLineId() != null && line.answer() != null) {
                said.put(
                        checklist.line(line.checkLineId()).origin(),
                        said(line.answer(), line.asLeft(), null, line.instrument()));
            }
        }
        return said;
    }

    private static Map<Long, String> saved(Worksheet sheet) {
        Map<Long, String> said = new HashMap<>();
        sheet.saved().forEach((id, saved) -> {
            Answer answer = saved.answer();
            CheckLine line = sheet.checklist().line(id);
            String words = said(line, answer, sheet.notes());
            if (words != null) {
                said.put(line.origin(), words);
            }
        });
        return said;
    }

    private List<Beside.Row> rows(Conflict conflict, Worksheet sheet, Map<Long, String> theirs) {
        SentTask sent = new SentTask(conflict.entry().fields());
        Checklist shown = counter.shown(sent, sheet);
        List<Beside.Row> rows = new ArrayList<>();
        for (Answer answer : sent.answers(shown)) {
            CheckLine line = shown.line(answer.lineId());
            rows.add(new Beside.Row(
                    line.question(), null, 0, said(line, answer, sent.notes()), theirs.get(line.origin())));
        }
        String note = sent.notes().note();
        if (note != null && !note.isBlank()) {
            rows.add(new Beside.Row(null, "care.note", 0, note, sheet.notes().note()));
        }
        return rows;
    }

    private static @Nullable String said(CheckLine line, Answer answer, TaskNotes beside) {
        return said(answer.answer(), answer.asLeft(), answer.finding(), Settling.measuredWith(line, answer, beside));
    }

    private static @Nullable String said(
            @Nullable String answer, @Nullable String left, @Nullable String finding, @Nullable String instrument) {
        StringBuilder said = new StringBuilder(answer == null ? "" : answer);
        if (left != null && !left.isBlank()) {
            said.append(" → ").append(left);
        }
        if (instrument != null) {
            said.append(" (").append(instrument).append(')');
        }
        if (finding != null && !finding.isBlank()) {
            said.append(" – ").append(finding);
        }
        return said.isEmpty() ? null : said.toString();
    }

    private static List<Beside.Row> typed(Entry entry) {
        String room = entry.kind() == Entry.Kind.FINDING ? "findings." : "readings.";
        List<Beside.Row> rows = new ArrayList<>();
        new TreeMap<>(entry.fields()).forEach((name, value) -> {
            Matcher piece = PIECE.matcher(name);
            Matcher lap = LAP.matcher(name);
            if (value.isBlank() || Offline.UNTYPED.contains(name)) {
                return;
            }
            if (piece.matches()) {
                rows.add(new Beside.Row(
                        null, room + "piece." + piece.group(2), Integer.parseInt(piece.group(1)) + 1, value, null));
            } else if (lap.matches()) {
                rows.add(new Beside.Row(null, room + "lap", Integer.parseInt(lap.group(1)), value, null));
            } else {
                rows.add(new Beside.Row(null, room + name, 0, value, null));
            }
        });
        return rows;
    }
}
