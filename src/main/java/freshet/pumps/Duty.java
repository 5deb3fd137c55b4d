package freshet.pumps;

/** The duty types of IEC 60034-1 that small pumps are plated with: S1 continuous, S2 short time in minutes, S3 periodic in percent. */
public enum Duty {
    S1,
    S2,
    S3
}
