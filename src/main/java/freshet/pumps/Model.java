package freshet.pumps;

import freshet.hydraulics.Curve;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A pump as its maker rates it. {@code points} are what the sheet gives, {@code curve} is what is computed with;
 * {@code curveUncertainty} is the standard uncertainty of the curve as a fraction of flow.
 */
public record Model(
        long id,
        String name,
        PumpKind kind,
        Drive drive,
        boolean hasFloat,
        Ratings ratings,
        CurveForm curveForm,
        List<CurvePoint> points,
        Curve curve,
        double curveUncertainty,
        @Nullable String curveSource,
        @Nullable String note,
        int version) {

    /** What would have to be drafted to have this model. */
    public ModelDraft draft() {
        return new ModelDraft(
                name, kind, drive, hasFloat, ratings, curveForm, points, curveUncertainty, curveSource, note);
    }
}
