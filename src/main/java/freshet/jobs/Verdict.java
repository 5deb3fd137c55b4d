package freshet.jobs;

/** Whether a pump can do a job. */
enum Verdict {
    /** With the margin that is wanted, the doubt counted in. */
    DOES,
    /** On paper, but with less margin than is wanted, or not at the low end of the doubt. */
    THIN,
    SHORT,
    NO_WATER,
    /** The pump would run past the last point of its curve; nothing is extrapolated. */
    BEYOND_CURVE,
    /** The unit was never tested. */
    UNKNOWN;

    /** Least margin of flow that is wanted, of the usual 15 to 25 %; common practice, no source. */
    static final double LEAST_MARGIN = 0.15;

    static Verdict of(boolean untested, Gives gives, double wantedM3h) {
        if (untested) {
            return UNKNOWN;
        }
        if (gives.noWater()) {
            return NO_WATER;
        }
        if (gives.beyondCurve()) {
            return BEYOND_CURVE;
        }
        double margin = gives.margin(wantedM3h);
        return margin < 0 ? SHORT : margin < LEAST_MARGIN || gives.lowM3h() < wantedM3h ? THIN : DOES;
    }
}
