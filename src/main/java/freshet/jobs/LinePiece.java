package freshet.jobs;

import freshet.hydraulics.Fitting;
import freshet.readings.FlowTestDraft.Piece;
import freshet.readings.PieceForm;
import freshet.readings.PieceForm.Family;
import java.util.List;

/** One piece of a job's line; an adapter is two parts, one of each bore, and anything else is one. */
record LinePiece(Family family, List<Piece> parts) {

    /** Two figures of K that are the same but for rounding. */
    private static final double SAME = 1e-9;

    static LinePiece of(PieceForm form, List<Piece> parts) {
        return new LinePiece(form.family(), List.copyOf(parts));
    }

    String kind() {
        return parts.get(0).piece();
    }

    /** Bore where the water comes in, mm. */
    double fromMm() {
        return parts.get(0).innerDiameterMm();
    }

    /** Bore where it goes on, mm. */
    double boreMm() {
        return parts.get(parts.size() - 1).innerDiameterMm();
    }

    double lengthM() {
        return parts.stream().mapToDouble(Piece::lengthM).sum();
    }

    boolean hose() {
        return family == Family.HOSE;
    }

    /** A hose or fitting of the same kind in another bore; a fitting keeps a K of its own, and takes the new bore's when it had none. */
    LinePiece inBore(double mm) {
        Piece old = parts.get(0);
        double k = old.lossCoefficient();
        if (family == Family.FITTING) {
            Fitting fitting = Fitting.valueOf(old.piece());
            k = Math.abs(k - fitting.lossCoefficient(old.innerDiameterMm())) < SAME ? fitting.lossCoefficient(mm) : k;
        }
        return new LinePiece(
                family, List.of(new Piece(old.piece(), mm, old.lengthM(), old.roughnessMm(), old.hazenWilliamsC(), k)));
    }

    LinePiece losing(double factor) {
        return new LinePiece(
                family,
                parts.stream()
                        .map(part -> new Piece(
                                part.piece(),
                                part.innerDiameterMm(),
                                factor * part.lengthM(),
                                part.roughnessMm(),
                                part.hazenWilliamsC(),
                                factor * part.lossCoefficient()))
                        .toList());
    }
}
