package freshet.care;

import freshet.checklists.Checklist;
import freshet.pumps.Unit;
import java.util.Map;

/** A task with the checklist that it is worked by, what has been answered so far, by line, and what was typed beside the lines. */
public record Worksheet(Task task, Unit unit, Checklist checklist, Map<Long, SavedAnswer> saved, TaskNotes notes) {}
