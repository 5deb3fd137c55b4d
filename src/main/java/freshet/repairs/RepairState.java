package freshet.repairs;

/** Where a repair stands; one waits as long as a part of it is not here. */
public enum RepairState {
    TO_DO,
    WAITING,
    DONE,
    GIVEN_UP
}
