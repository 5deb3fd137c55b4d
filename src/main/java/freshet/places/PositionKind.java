package freshet.places;

/** What a pump stands in or serves. */
public enum PositionKind {
    PIT,
    WELL,
    TANK,
    PLANT_ROOM,
    STORE,
    OTHER
}
