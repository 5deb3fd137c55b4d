package freshet.readings;

import freshet.hydraulics.FlowTestReduction.Reason;
import freshet.hydraulics.LineLoss;
import freshet.hydraulics.PumpOrLine;
import freshet.readings.FlowTestResult.Figures;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a page shows of a flow test: where the flow of a new pump goes, and where the head goes.
 *
 * @param verdict null when the head was read on a gauge, which leaves nothing to divide
 * @param flowParts in m³/h; empty without a verdict
 * @param headParts in m; empty when the head was read on a gauge
 */
record FlowTestPage(FlowTestResult result, @Nullable Verdict verdict, List<Part> flowParts, List<Part> headParts) {

    /** Whether the missing flow is missing in the line or in the pump; the thirds are common practice, no source. */
    enum Verdict {
        LINE,
        PUMP,
        BOTH,
        NEITHER
    }

    private static final double MOSTLY = 2.0 / 3;
    private static final double EASY_LINE = 0.1;

    static FlowTestPage of(FlowTestResult result) {
        Figures figures = result.figures();
        PumpOrLine split = figures == null ? null : figures.split();
        LineLoss losses = figures == null ? null : figures.losses();
        return new FlowTestPage(
                result,
                figures == null || split == null ? null : verdict(figures, split),
                figures == null || split == null
                        ? List.of()
                        : Part.bar(
                                new String[] {"arrives", "toLine", "toPump"},
                                new String[] {"f-water", "open", "close"},
                                figures.flowM3h(),
                                split.lostToLineM3h(),
                                split.lostToPumpM3h()),
                losses == null
                        ? List.of()
                        : Part.bar(
                                new String[] {"lift", "friction", "fittings", "exit"},
                                new String[] {"run", "open", "close", "law"},
                                losses.liftM(),
                                losses.frictionM(),
                                losses.fittingsM(),
                                losses.exitM()));
    }

    private static Verdict verdict(Figures figures, PumpOrLine split) {
        double line = Math.max(0, split.lostToLineM3h());
        double pump = Math.max(0, split.lostToPumpM3h());
        if (!figures.rated().verdictReasons().contains(Reason.LOSS_BEYOND_DOUBT)) {
            return line > EASY_LINE * split.ratedFlowM3h() ? Verdict.LINE : Verdict.NEITHER;
        }
        double share = line / (line + pump);
        return share >= MOSTLY ? Verdict.LINE : share <= 1 - MOSTLY ? Verdict.PUMP : Verdict.BOTH;
    }
}
