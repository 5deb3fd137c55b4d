package freshet.jobs;

import freshet.hydraulics.Line;
import freshet.hydraulics.LineLoss;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What is worked out for one pump on one job.
 *
 * @param gives as worn where the unit was tested, else as rated
 * @param rated as the maker rates it
 * @param verdict what that means for the job
 * @param workingM3h the flow at which the losses hold, m³/h
 * @param losses of the whole line at that flow
 * @param pieces what each piece costs, in flow order
 * @param bores the same job on hoses of one bore throughout
 * @param drain null when there is nothing to drain
 */
record JobSheet(
        Job job,
        Chosen pump,
        Gives gives,
        Gives rated,
        Verdict verdict,
        double workingM3h,
        LineLoss losses,
        List<PieceCost> pieces,
        List<OtherBore> bores,
        @Nullable Drain drain) {

    /**
     * What one piece costs.
     *
     * @param lossM at the working flow, m
     * @param velocityMs where it is narrowest, m/s
     * @param gainWithoutM3h flow gained if it were not there; null when that cannot be said
     * @param sizeUpMm the next usual bore of a hose; null for other pieces and above the widest
     * @param gainSizeUpM3h flow gained with that bore
     */
    record PieceCost(
            LinePiece piece,
            double lossM,
            double velocityMs,
            @Nullable Double gainWithoutM3h,
            @Nullable Double sizeUpMm,
            @Nullable Double gainSizeUpM3h) {}

    /** The same job on hoses of one bore: new, and as worn where the unit was tested. */
    record OtherBore(
            double boreMm,
            boolean there,
            Gives rated,
            @Nullable Gives worn,
            double velocityMs) {}

    static JobSheet of(Job job, Chosen pump) {
        Line line = job.line().behind(pump.outletMm());
        Gives gives = Gives.of(pump.curves(), job.line(), pump.outletMm());
        double flow = gives.flowM3h();
        LineLoss losses = LineLoss.of(line, flow);
        return new JobSheet(
                job,
                pump,
                gives,
                Gives.of(Curves.rated(pump.model()), job.line(), pump.outletMm()),
                Verdict.of(pump.untested(), gives, job.wantedM3h()),
                flow,
                losses,
                pieces(job.line(), pump, gives, losses),
                bores(job.line(), pump),
                Drain.of(job, pump.curves(), gives, line));
    }

    private static List<PieceCost> pieces(JobLine line, Chosen pump, Gives gives, LineLoss losses) {
        List<PieceCost> costs = new ArrayList<>();
        List<Double> each = line.losses(losses);
        int section = 0;
        for (int i = 0; i < each.size(); i++) {
            LinePiece piece = line.pieces().get(i);
            double fastest = 0;
            for (int part = 0; part < piece.parts().size(); part++) {
                fastest = Math.max(fastest, losses.sections().get(section++).velocityMs());
            }
            Double sizeUp = piece.hose() ? JobLine.sizeUpMm(piece.boreMm()) : null;
            costs.add(new PieceCost(
                    piece,
                    each.get(i),
                    fastest,
                    gain(line.without(i), pump, gives),
                    sizeUp,
                    sizeUp == null ? null : gain(line.with(i, piece.inBore(sizeUp)), pump, gives)));
        }
        return costs;
    }

    /** How much more comes through another line; null when that runs beyond the curve. */
    private static @Nullable Double gain(JobLine other, Chosen pump, Gives gives) {
        Gives then = Gives.of(pump.curves(), other, pump.outletMm());
        return then.beyondCurve() || gives.beyondCurve() ? null : Double.valueOf(then.flowM3h() - gives.flowM3h());
    }

    private static List<OtherBore> bores(JobLine line, Chosen pump) {
        List<OtherBore> bores = new ArrayList<>();
        for (double bore : line.usualBoresMm()) {
            JobLine other = line.throughout(bore);
            Gives rated = Gives.of(Curves.rated(pump.model()), other, pump.outletMm());
            Gives worn = pump.own() == null ? null : Gives.of(pump.curves(), other, pump.outletMm());
            double flow = (worn == null ? rated : worn).flowM3h();
            double velocity = flow / 3600 / (Math.PI / 4 * bore * bore / 1e6);
            bores.add(new OtherBore(bore, line.isThroughout(bore), rated, worn, velocity));
        }
        return bores;
    }

    double margin() {
        return gives.margin(job.wantedM3h());
    }
}
