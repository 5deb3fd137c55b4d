package freshet.wear;

/**
 * What is asked about the wear of a unit.
 *
 * @param threshold share of the first test at which the unit is done
 * @param robust also draw the line that single wild tests cannot turn
 * @param through count all tests in one line, as if the repairs had changed nothing
 */
public record WearQuestion(double threshold, boolean robust, boolean through) {

    /** Below this it is cleaned, measured and listed for repair; common practice, no source. */
    public static final double USUAL_THRESHOLD = 0.80;

    static final double LEVEL = 0.95;

    static final WearQuestion USUAL = new WearQuestion(USUAL_THRESHOLD, false, false);
}
