package freshet.jobs;

import freshet.hydraulics.Curve;
import freshet.hydraulics.LineLoss;
import freshet.hydraulics.Water;
import freshet.readings.FlowTestDraft.Piece;
import freshet.readings.PieceForm.Family;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Where the flow of a new pump goes: into the line, into something hidden in the line, into wear, and out of the end.
 *
 * @param bare what the pump gives as rated with the lift alone
 * @param expected what it gives as rated through the line that was typed
 * @param real what it gives as rated through the line as the gauge shows it; null without a gauge
 * @param asTested what the unit gives through the line by its own tests; null when it has none
 * @param lineM what the line takes at the measured flow, worked out from its pieces, with the lift, m
 * @param gaugeM total head by the gauge; null without one
 * @param gaugeDoubtM its expanded uncertainty with the line's, m; null with it
 */
record Split(
        Chosen pump,
        Measured measured,
        Gives bare,
        Gives expected,
        @Nullable Gives real,
        @Nullable Gives asTested,
        LineLoss losses,
        @Nullable Double gaugeM,
        @Nullable Double gaugeDoubtM) {

    /** What the figures say. */
    enum Verdict {
        LINE,
        PUMP,
        BOTH,
        NEITHER,
        /** It gives more than a new one could. */
        MORE
    }

    /** From this share of the loss on it is mostly the one or the other; common practice, no source. */
    private static final double MOSTLY = 2.0 / 3;
    /** A line that takes less of the bare flow than this is an easy one; common practice, no source. */
    private static final double EASY_LINE = 0.1;

    private static final double ANY_BORE_MM = 50;
    private static final double MOST_K = 1e5;

    static Split of(Chosen pump, Measured measured) {
        Curves rated = Curves.rated(pump.model());
        JobLine line = measured.line();
        Double outlet = measured.outletMm();
        LineLoss losses = LineLoss.of(line.behind(outlet), measured.flowM3h());
        JobLine real = measured.gauge() == null ? null : real(measured, losses);
        return new Split(
                pump,
                measured,
                Gives.of(rated, new JobLine(line.liftM(), line.waterC(), List.of()), outlet),
                Gives.of(rated, line, outlet),
                real == null ? null : Gives.of(rated, real, outlet),
                pump.own() == null ? null : Gives.of(pump.curves(), line, outlet),
                losses,
                measured.gauge() == null
                        ? null
                        : Double.valueOf(measured.gauge().headAt(measured.flowM3h())),
                measured.gauge() == null
                        ? null
                        : Double.valueOf(Math.hypot(
                                2 * measured.gauge().standardUncertaintyM(),
                                JobLine.LOSS_DOUBT * (losses.headM() - losses.liftM()))));
    }

    /** The line with what the gauge shows more than its pieces take, as a fitting at its end; null when that cannot be. */
    private static @Nullable JobLine real(Measured measured, LineLoss losses) {
        double moreM = measured.gauge().headAt(measured.flowM3h()) - losses.headM();
        JobLine line = measured.line();
        if (moreM <= 0) {
            return line;
        }
        Double outlet = measured.outletMm();
        double bore = line.pieces().isEmpty()
                ? outlet == null ? ANY_BORE_MM : outlet
                : line.pieces().get(line.pieces().size() - 1).boreMm();
        double velocity = measured.flowM3h() / 3600 / (Math.PI / 4 * bore * bore * 1e-6);
        double k = moreM * 2 * Water.GRAVITY_MS2 / (velocity * velocity);
        if (!(k < MOST_K)) {
            return null;
        }
        List<LinePiece> pieces = new ArrayList<>(line.pieces());
        pieces.add(new LinePiece(Family.FITTING, List.of(new Piece("GATE_VALVE", bore, 0, 0.0, null, k))));
        return new JobLine(line.liftM(), line.waterC(), pieces);
    }

    double toLineM3h() {
        return bare.flowM3h() - expected.flowM3h();
    }

    /** Lost to what no piece explains; 0 without a gauge. */
    double hiddenM3h() {
        return real == null ? 0 : expected.flowM3h() - real.flowM3h();
    }

    double wearM3h() {
        return through().flowM3h() - measured.flowM3h();
    }

    private Gives through() {
        return real == null ? expected : real;
    }

    /** Expanded uncertainty of what wear takes: of the pump and line that it is held against, and of the measured flow. */
    double wearDoubtM3h() {
        Gives through = through();
        return Math.hypot(through.flowM3h() - through.lowM3h(), measured.flowDoubt() * measured.flowM3h());
    }

    boolean wornBeyondDoubt() {
        return wearM3h() > wearDoubtM3h();
    }

    /** Head that the gauge shows beyond lift and pieces, m; null without a gauge. */
    @Nullable
    Double hiddenM() {
        return gaugeM == null ? null : Double.valueOf(gaugeM - losses.headM());
    }

    Verdict verdict() {
        if (!through().beyondCurve() && -wearM3h() > wearDoubtM3h()) {
            return Verdict.MORE;
        }
        double line = Math.max(0, toLineM3h() + Math.max(0, hiddenM3h()));
        if (!wornBeyondDoubt()) {
            return line > EASY_LINE * bare.flowM3h() ? Verdict.LINE : Verdict.NEITHER;
        }
        double share = line / (line + wearM3h());
        return share >= MOSTLY ? Verdict.LINE : share <= 1 - MOSTLY ? Verdict.PUMP : Verdict.BOTH;
    }

    /** The rated head at the measured flow, m; null beyond the curve. */
    @Nullable
    Double ratedHeadM() {
        Curve curve = pump.model().curve();
        return measured.flowM3h() > curve.lastFlowM3h() ? null : Double.valueOf(curve.headAt(measured.flowM3h()));
    }
}
