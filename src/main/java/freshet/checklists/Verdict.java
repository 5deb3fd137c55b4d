package freshet.checklists;

/** What was made of an answer: judged, set aside, written down without limits, or left unanswered. */
public enum Verdict {
    PASS,
    WATCH,
    FAIL,
    DOES_NOT_APPLY,
    NOTED,
    LEFT
}
