package freshet.jobs;

import java.util.List;

/**
 * Which of our units can do a job: those that can by margin, then those that cannot be judged, then those that cannot.
 *
 * @param shown the first of them
 * @param able how many can, as tested
 * @param untested how many were never tested
 * @param total how many there are
 */
record UnitMatches(List<UnitMatch> shown, int able, int untested, int total) {

    public int more() {
        return total - shown.size();
    }
}
