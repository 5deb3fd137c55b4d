package freshet.rules;

import java.util.Objects;

/** What a trigger goes by, as a form offers it. */
enum TriggerKind {
    SEASON,
    CALENDAR,
    RUN_HOURS,
    STARTS,
    EVENT,
    RELOCATED,
    IDLE,
    CONDITION;

    static TriggerKind of(Trigger trigger) {
        return Objects.requireNonNull(TriggerForm.of(trigger).kind());
    }
}
