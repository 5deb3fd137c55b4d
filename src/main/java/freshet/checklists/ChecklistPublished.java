package freshet.checklists;

/** A new version of a checklist stands; {@code minutes} is what to plan with now. */
public record ChecklistPublished(long checklistId, int minutes) {}
