package freshet.rules;

/** A figure of a unit that a rule watches, and the side of the limit that makes work due. */
public enum Measure {
    /** Remaining capacity as a fraction of reference flow, below the limit. */
    CAPACITY,
    /** Days until the trend of remaining capacity reaches 80 %, below the limit. */
    DAYS_TO_CAPACITY_LOW,
    /** Starts an hour of running time or of the clock as the duty cycle has it, above the limit. */
    STARTS_PER_HOUR,
    /** Minutes a start, above the limit: wear, blockage or more inflow. */
    MINUTES_PER_START,
    /** How far the run hours of two pumps in one pit are apart, as a fraction of the higher, above the limit. */
    HOURS_APART
}
