package freshet.people;

/** Work that only a person recorded as competent may sign for. */
public enum Competence {
    ELECTRICAL,
    GAS,
    LICENCE
}
