package freshet.readings;

import freshet.hydraulics.Fitting;
import freshet.hydraulics.HoseKind;
import freshet.hydraulics.Line;
import freshet.hydraulics.OutOfRange;
import freshet.measures.Quantity;
import freshet.measures.UnitSystem;
import freshet.measures.Usual;
import freshet.people.Typed;
import freshet.pumps.KitItem;
import freshet.pumps.KitKind;
import freshet.pumps.Unit;
import freshet.readings.FlowTestDraft.Piece;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * What was typed about one piece of the line. A hose has a bore and a length, and may have its own C or roughness; an adapter has
 * two bores; a fitting has one. Any of them may have a K.
 */
public record PieceForm(
        @Nullable String piece,
        @Nullable String bore,
        @Nullable String toBore,
        @Nullable String length,
        @Nullable String c,
        @Nullable String roughness,
        @Nullable String k) {

    public static final String ADAPTER = "ADAPTER";

    public static final List<String> HOSES =
            Arrays.stream(HoseKind.values()).map(Enum::name).toList();
    public static final List<String> FITTINGS = Arrays.stream(Fitting.values())
            // the free end is counted once for the whole line
            .filter(fitting -> fitting != Fitting.FREE_END)
            .map(Enum::name)
            .toList();

    /** Most pieces of a typed line. */
    public static final int MOST = 8;

    /** Which fields a piece has. */
    public enum Family {
        HOSE,
        ADAPTER,
        FITTING
    }

    public PieceForm {
        if (!ADAPTER.equals(piece) && !FITTINGS.contains(piece) && !HOSES.contains(piece)) {
            piece = HoseKind.SMOOTH_HOSE.name();
        }
    }

    public static PieceForm blank(Family family) {
        String piece = switch (family) {
            case HOSE -> HoseKind.SMOOTH_HOSE.name();
            case ADAPTER -> ADAPTER;
            case FITTING -> Fitting.ELBOW_90.name();
        };
        return new PieceForm(piece, null, null, null, null, null, null);
    }

    private static PieceForm hose(@Nullable Double boreMm, @Nullable Double lengthM, UnitSystem system) {
        return new PieceForm(
                HoseKind.SMOOTH_HOSE.name(),
                input(Quantity.BORE, boreMm, system),
                null,
                input(Quantity.LENGTH, lengthM, system),
                null,
                null,
                null);
    }

    private static PieceForm adapter(@Nullable Double fromMm, @Nullable Double toMm, UnitSystem system) {
        return new PieceForm(
                ADAPTER,
                input(Quantity.BORE, fromMm, system),
                input(Quantity.BORE, toMm, system),
                null,
                null,
                null,
                null);
    }

    /** The hoses and adapters that go with a unit; one blank hose when none do. */
    public static List<PieceForm> of(Unit unit, UnitSystem system) {
        List<PieceForm> pieces = new ArrayList<>();
        for (KitItem item : unit.kit()) {
            if (item.kind() == KitKind.HOSE) {
                pieces.add(hose(item.boreMm(), item.lengthM(), system));
            } else if (item.kind() == KitKind.ADAPTER) {
                pieces.add(adapter(item.boreMm(), item.outletBoreMm(), system));
            }
        }
        return pieces.isEmpty() ? List.of(blank(Family.HOSE)) : pieces;
    }

    /** What came with a form, without gaps and no more than there may be. */
    public static List<PieceForm> kept(@Nullable List<PieceForm> typed) {
        return typed == null
                ? List.of()
                : typed.stream().filter(Objects::nonNull).limit(MOST).toList();
    }

    /** The pieces after a press that adds one, such as {@code add-HOSE}, or takes one out, such as {@code out-0}. */
    public static List<PieceForm> pressed(List<PieceForm> pieces, String press) {
        List<PieceForm> changed = new ArrayList<>(pieces);
        for (Family family : Family.values()) {
            if (press.equals("add-" + family) && changed.size() < MOST) {
                changed.add(blank(family));
            }
        }
        for (int i = 0; i < pieces.size(); i++) {
            if (press.equals("out-" + i)) {
                changed.remove(i);
            }
        }
        return changed;
    }

    /** Whether a press changes the pieces rather than sends the form. */
    public static boolean changes(String press) {
        return press.startsWith("add-") || press.startsWith("out-");
    }

    /** The pieces of a test as they were typed; an adapter is two of its pieces. */
    public static List<PieceForm> of(List<Piece> pieces, UnitSystem system) {
        List<PieceForm> forms = new ArrayList<>();
        for (int i = 0; i < pieces.size(); i++) {
            Piece piece = pieces.get(i);
            boolean adapter = ADAPTER.equals(piece.piece()) && i + 1 < pieces.size();
            Piece last = adapter ? pieces.get(++i) : piece;
            String k = last.lossCoefficient() == 0 ? null : String.valueOf(last.lossCoefficient());
            forms.add(new PieceForm(
                    piece.piece(),
                    input(Quantity.BORE, piece.innerDiameterMm(), system),
                    adapter ? input(Quantity.BORE, last.innerDiameterMm(), system) : null,
                    piece.lengthM() == 0 ? null : input(Quantity.LENGTH, piece.lengthM(), system),
                    piece.hazenWilliamsC() == null ? null : String.valueOf(piece.hazenWilliamsC()),
                    ownRoughness(piece),
                    k));
        }
        return forms;
    }

    private static @Nullable String ownRoughness(Piece piece) {
        boolean usual = piece.roughnessMm() == null
                || !HOSES.contains(piece.piece())
                || piece.roughnessMm() == HoseKind.valueOf(piece.piece()).roughnessMm();
        return usual ? null : piece.roughnessMm() + " mm";
    }

    private static @Nullable String input(Quantity quantity, @Nullable Double inside, UnitSystem system) {
        return inside == null ? null : quantity.input(inside, system);
    }

    public Family family() {
        return ADAPTER.equals(piece) ? Family.ADAPTER : FITTINGS.contains(piece) ? Family.FITTING : Family.HOSE;
    }

    /** The pieces that this one is in a draft; empty when something is wrong with it. */
    public List<Piece> pieces(String path, Typed typed) {
        Double boreMm = typed.required(
                path + "bore", typed.usual(path + "bore", bore, Usual.BORE), "readings.piece.bore.missing");
        Double ownK = typed.number(path + "k", k);
        double coefficient = ownK == null ? 0 : ownK;
        if (family() == Family.HOSE) {
            Double lengthM = typed.required(
                    path + "length",
                    typed.usual(path + "length", length, Usual.LENGTH),
                    "readings.piece.length.missing");
            Double ownC = typed.number(path + "c", c);
            Double own = typed.quantity(path + "roughness", roughness, Quantity.BORE);
            if (ownC != null && own != null) {
                typed.wrong(path + "c", "readings.piece.both");
            }
            Double rough = ownC == null ? own == null ? HoseKind.valueOf(piece).roughnessMm() : own : null;
            return boreMm == null || lengthM == null
                    ? List.of()
                    : checked(path, typed, new Piece(piece, boreMm, lengthM, rough, ownC, coefficient));
        }
        if (family() == Family.ADAPTER) {
            Double toMm = typed.required(
                    path + "toBore", typed.usual(path + "toBore", toBore, Usual.BORE), "readings.piece.bore.missing");
            if (boreMm == null || toMm == null) {
                return List.of();
            }
            List<Piece> both = new ArrayList<>(checked(path, typed, bore(boreMm, 0)));
            both.addAll(checked(path, typed, bore(toMm, coefficient)));
            return both;
        }
        if (boreMm == null) {
            return List.of();
        }
        List<Piece> one = checked(path, typed, bore(boreMm, coefficient));
        return one.isEmpty() || ownK != null
                ? one
                : List.of(bore(boreMm, Fitting.valueOf(piece).lossCoefficient(boreMm)));
    }

    private Piece bore(double boreMm, double coefficient) {
        return new Piece(piece, boreMm, 0, 0.0, null, coefficient);
    }

    private static List<Piece> checked(String path, Typed typed, Piece piece) {
        try {
            Line.of(0, piece.section());
            return List.of(piece);
        } catch (OutOfRange refused) {
            String field = refused.field().substring(refused.field().lastIndexOf('.') + 1);
            typed.wrong(
                    path
                            + switch (field) {
                                case "lengthM" -> "length";
                                case "roughnessMm" -> "roughness";
                                case "hazenWilliamsC" -> "c";
                                case "lossCoefficient" -> "k";
                                default -> "bore";
                            },
                    "readings.outOfRange");
            return List.of();
        }
    }
}
