package freshet.hire;

/** The views of a unit that are photographed when it goes out and when it is back, so that the two can be laid side by side. */
public enum View {
    FRONT,
    BACK,
    LEFT,
    RIGHT,
    CORD_AND_PLUG,
    PLATE_AND_METER
}
