package freshet.jobs;

import freshet.fleet.Readiness;
import freshet.pumps.Unit;
import org.jspecify.annotations.Nullable;

/**
 * One of our units held against a job.
 *
 * @param worn what it gives as worn; null when it was never tested
 * @param rated what its model gives new
 * @param passes false when its model is not rated for the solids or the temperature of the job
 */
record UnitMatch(Unit unit, @Nullable Gives worn, Gives rated, double wantedM3h, boolean passes, Readiness readiness) {

    Verdict verdict() {
        return Verdict.of(worn == null, worn == null ? rated : worn, wantedM3h);
    }

    /** What to say of it, as the end of a message's key. */
    public String word() {
        if (!passes) {
            return "notRated";
        }
        return worn == null && margin() < 0 ? "shortWhenNew" : verdict().name();
    }

    /** Margin as worn, or as rated when it was never tested. */
    public double margin() {
        return (worn == null ? rated : worn).margin(wantedM3h);
    }

    /** Whether its tests say that it gives what is wanted, with or without the usual margin, and its model passes what comes. */
    boolean able() {
        return worn != null && passes && worn.flowM3h() >= wantedM3h;
    }

    /** Able ones stand first, then those that nobody can judge, then the rest. */
    int group() {
        return able() ? 0 : worn == null && passes && margin() >= 0 ? 1 : 2;
    }
}
