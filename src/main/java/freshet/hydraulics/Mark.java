package freshet.hydraulics;

/** How far a figure of a catalogue can be trusted. */
public enum Mark {
    /** Follows from a definition or a balance; no table needed. */
    BY_DEFINITION,
    /** Read in a published text that its source names. */
    PUBLISHED,
    /** Its source is named from memory and was not read again. */
    FROM_MEMORY,
    /** Common practice, no source. */
    COMMON_PRACTICE
}
