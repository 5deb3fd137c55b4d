package freshet.jobs;

import freshet.hydraulics.Curve;
import freshet.pumps.Model;
import freshet.readings.TestPlot;

/** A pump's curve and the two between which it lies by its expanded uncertainty, k = 2. */
record Curves(Curve curve, Curve lower, Curve upper) {

    private static final double COVERAGE = 2;
    private static final double LOWEST_FACTOR = 0.01;

    /** As the maker rates it, with the rated curve's tolerance. */
    static Curves rated(Model model) {
        double doubt = COVERAGE * model.curveUncertainty();
        return new Curves(
                model.curve(),
                model.curve().scaled(Math.max(LOWEST_FACTOR, 1 - doubt), 1),
                model.curve().scaled(1 + doubt, 1));
    }

    /** As its tests show it. */
    static Curves tested(TestPlot.OwnLine own) {
        return new Curves(own.curve(), own.lower(), own.upper());
    }
}
