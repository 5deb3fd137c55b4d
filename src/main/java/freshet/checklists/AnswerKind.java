package freshet.checklists;

/** How a check is answered; a question of {@code YES_NO} is asked so that yes passes. */
public enum AnswerKind {
    YES_NO,
    NUMBER,
    CHOICE,
    TEXT
}
