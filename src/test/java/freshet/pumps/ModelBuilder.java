package freshet.pumps;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Drafts of models for tests; heads in m, flows in m³/h. */
final class ModelBuilder {

    private final String name;
    private PumpKind kind = PumpKind.UTILITY_SUBMERSIBLE;
    private CurveForm form = CurveForm.TABLE;
    private List<CurvePoint> points = List.of();
    private @Nullable Double powerW;

    ModelBuilder(String name) {
        this.name = name;
        points(0, 7.62, 3.4, 6.7, 6.4, 4.9, 8.4, 2.4, 9.5, 0);
    }

    ModelBuilder kind(PumpKind itsKind) {
        kind = itsKind;
        return this;
    }

    /** Flow, head, flow, head and so on. */
    ModelBuilder points(double... flowsAndHeads) {
        List<CurvePoint> made = new ArrayList<>();
        for (int i = 0; i < flowsAndHeads.length; i += 2) {
            made.add(new CurvePoint(flowsAndHeads[i], flowsAndHeads[i + 1]));
        }
        points = made;
        return this;
    }

    ModelBuilder twoParameters(double shutOffHeadM, double openFlowM3h) {
        form = CurveForm.TWO_PARAMETER;
        return points(0, shutOffHeadM, openFlowM3h, 0);
    }

    ModelBuilder powerW(double watts) {
        powerW = watts;
        return this;
    }

    ModelDraft build() {
        Ratings ratings = new Ratings(null, null, null, powerW, null, null, null, null, null, null, null, null);
        return new ModelDraft(
                name,
                kind,
                Drive.SINGLE_PHASE,
                false,
                powerW == null ? Ratings.NONE : ratings,
                form,
                points,
                ModelDraft.USUAL_CURVE_UNCERTAINTY,
                null,
                null);
    }
}
