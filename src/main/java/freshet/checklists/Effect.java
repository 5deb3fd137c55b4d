package freshet.checklists;

/** What a signed record of a checklist says about the unit: it proved what the unit can do, it laid the unit up, or neither. */
public enum Effect {
    PROVES,
    LAYS_UP,
    NONE
}
