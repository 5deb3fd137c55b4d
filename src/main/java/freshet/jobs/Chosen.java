package freshet.jobs;

import freshet.fleet.Readiness;
import freshet.pumps.Model;
import freshet.pumps.Unit;
import freshet.readings.TestPlot;
import org.jspecify.annotations.Nullable;

/**
 * The pump that is asked about.
 *
 * @param unit null when only a model was named
 * @param own the line that the unit runs on now; null when it was never tested
 * @param readiness of the unit; null with it
 */
record Chosen(
        Model model,
        @Nullable Unit unit,
        TestPlot.@Nullable OwnLine own,
        @Nullable Readiness readiness) {

    public String name() {
        return unit == null ? model.name() : unit.tag();
    }

    /** As worn where it was tested, else as rated. */
    Curves curves() {
        return own == null ? Curves.rated(model) : Curves.tested(own);
    }

    /** A unit of which nobody can say what it gives today. */
    boolean untested() {
        return unit != null && own == null;
    }

    @Nullable
    Double outletMm() {
        return model.ratings().outletMm();
    }
}
