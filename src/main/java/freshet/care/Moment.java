package freshet.care;

/** When a photo shows a pump: as it was found, or as it was left. */
public enum Moment {
    FOUND,
    LEFT
}
