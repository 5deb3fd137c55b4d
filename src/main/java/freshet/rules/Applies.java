package freshet.rules;

/** When a rule holds; triggers of run hours, starts and idleness rest in storage whatever this says. */
public enum Applies {
    ALWAYS,
    IN_USE,
    LAID_UP
}
