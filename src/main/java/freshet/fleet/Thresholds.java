package freshet.fleet;

/**
 * By what readiness is judged. That performance and electrical safety are proved within a year and since the last storage and repair is
 * common practice; a year is also what a wildland fire cache asks of a trash pump (NWCG). Hire under AS/NZS 3760 asks for an electrical
 * test every 3 months (from memory): set it shorter where that holds.
 */
final class Thresholds {

    static final int PROOF_MONTHS = 12;
    static final int ELECTRICAL_MONTHS = 12;

    // of reference flow; common practice, no source: pass from 90 %, watch from 80 %, derate below, repair below 70 %
    static final double CAPACITY_FULL = 0.90;
    static final double CAPACITY_LOW = 0.80;
    static final double CAPACITY_GONE = 0.70;

    /** From this severity an open finding puts a limit on use. */
    static final int LIMITS_USE = 2;

    private Thresholds() {}
}
