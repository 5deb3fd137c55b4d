package freshet.pumps;

import freshet.people.Refused;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What is to stand in the register about a model; the two-parameter form has two points, its shut-off head and its open flow. */
public record ModelDraft(
        String name,
        PumpKind kind,
        Drive drive,
        boolean hasFloat,
        Ratings ratings,
        CurveForm curveForm,
        List<CurvePoint> points,
        double curveUncertainty,
        @Nullable String curveSource,
        @Nullable String note) {

    /**
     * Half of ±10 %, read as two standard uncertainties: ISO 9906:2012 lets the flow of a pump of 1 to 10 kW differ so much (from
     * memory); smaller pumps are not held to less.
     */
    public static final double USUAL_CURVE_UNCERTAINTY = 0.05;

    public ModelDraft {
        points = List.copyOf(points);
    }

    /** What is possible but unusual, each at its field with the question to ask: see {@link ModelChecks}. */
    public List<Refused.Wrong> doubts() {
        return ModelChecks.doubts(this);
    }
}
