package freshet.jobs;

import freshet.hydraulics.HoseKind;
import freshet.hydraulics.Line;
import freshet.hydraulics.LineLoss;
import freshet.hydraulics.Section;
import freshet.readings.FlowTestDraft.Piece;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * What a job's water has to go through: the lift and the pieces in flow order from the pump.
 *
 * @param liftM from the water's surface up to the outlet
 */
record JobLine(double liftM, double waterC, List<LinePiece> pieces) {

    /**
     * How far computed losses of hose and pieces are off, as an expanded uncertainty: the middle of the 10 to 20 % that are usual;
     * common practice, no source.
     */
    static final double LOSS_DOUBT = 0.15;

    /** Bores a hose may be exchanged for lie between these parts of the narrowest and the widest hose there is. */
    private static final double NARROWEST = 0.8;

    private static final double WIDEST = 2.1;

    /** Two bores that are the same size by name. */
    private static final double SAME = 1e-3;

    /** The line behind a pump with this outlet, if known: the change of bore into the first piece then counts. */
    Line behind(@Nullable Double outletMm) {
        return new Line(liftM, waterC, outletMm, Line.FREE_END, sections());
    }

    /** The lift alone, as if the pump stood there without hose and pipe. */
    Line bare(@Nullable Double outletMm) {
        return new Line(liftM, waterC, outletMm, Line.FREE_END, List.of());
    }

    private List<Section> sections() {
        return pieces.stream()
                .flatMap(piece -> piece.parts().stream())
                .map(Piece::section)
                .toList();
    }

    /** What each piece takes in a worked-out loss, in order, m. */
    List<Double> losses(LineLoss loss) {
        List<Double> losses = new ArrayList<>();
        int section = 0;
        for (LinePiece piece : pieces) {
            double sum = 0;
            for (int i = 0; i < piece.parts().size(); i++) {
                sum += loss.sections().get(section++).lossM();
            }
            losses.add(sum);
        }
        return losses;
    }

    /** The same line when every piece takes this many times what is computed. */
    JobLine losing(double factor) {
        return new JobLine(
                liftM,
                waterC,
                pieces.stream().map(piece -> piece.losing(factor)).toList());
    }

    JobLine without(int index) {
        List<LinePiece> others = new ArrayList<>(pieces);
        others.remove(index);
        return new JobLine(liftM, waterC, others);
    }

    JobLine with(int index, LinePiece piece) {
        List<LinePiece> others = new ArrayList<>(pieces);
        others.set(index, piece);
        return new JobLine(liftM, waterC, others);
    }

    /** The same job on hoses of one bore throughout: the fittings in that bore too, the adapters left out. */
    JobLine throughout(double boreMm) {
        return new JobLine(
                liftM,
                waterC,
                pieces.stream()
                        .filter(piece -> piece.family() != freshet.readings.PieceForm.Family.ADAPTER)
                        .map(piece -> piece.inBore(boreMm))
                        .toList());
    }

    Stream<LinePiece> hoses() {
        return pieces.stream().filter(LinePiece::hose);
    }

    /** The usual bores worth a look, around those of the hoses there are; none without a hose. */
    List<Double> usualBoresMm() {
        double least = hoses().mapToDouble(LinePiece::boreMm).min().orElse(Double.NaN);
        double most = hoses().mapToDouble(LinePiece::boreMm).max().orElse(Double.NaN);
        return HoseKind.USUAL_BORES_MM.stream()
                .filter(bore -> bore >= NARROWEST * least && bore <= WIDEST * most)
                .toList();
    }

    /** Whether the line is of this one bore already, from its first piece to its last. */
    boolean isThroughout(double boreMm) {
        return pieces.stream().allMatch(piece -> alike(piece.fromMm(), boreMm) && alike(piece.boreMm(), boreMm));
    }

    /** The next usual bore above this one; null above the widest. */
    static @Nullable Double sizeUpMm(double boreMm) {
        return HoseKind.USUAL_BORES_MM.stream()
                .filter(usual -> usual > boreMm && !alike(usual, boreMm))
                .findFirst()
                .orElse(null);
    }

    private static boolean alike(double one, double other) {
        return Math.abs(one - other) <= SAME * Math.max(one, other);
    }
}
