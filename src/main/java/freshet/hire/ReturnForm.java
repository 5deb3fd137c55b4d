package freshet.hire;

import freshet.people.Person;
import freshet.people.Typed;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** What was typed about a unit that came back; {@code kit} has one count a piece, in the order of the list. */
record ReturnForm(
        @Nullable String inAt,
        @Nullable String hours,
        @Nullable String fuel,
        @Nullable String condition,
        @Nullable String liquid,
        @Nullable Boolean ranDry,
        @Nullable String cordIs,
        @Nullable String cord,
        @Nullable List<String> kit) {

    /** So many pieces a page can show; a message about one finds its field even when nothing was sent for it. */
    private static final int MOST_PIECES = 250;

    ReturnForm {
        List<String> counts = new ArrayList<>(kit == null ? List.of() : kit);
        while (counts.size() < MOST_PIECES) {
            counts.add("");
        }
        kit = counts;
    }

    static final String WHOLE = "WHOLE";
    static final String DAMAGED = "DAMAGED";

    static ReturnForm blank(Hire hire) {
        List<String> counts = hire.kit().stream()
                .map(piece -> String.valueOf(piece.quantityOut()))
                .toList();
        return new ReturnForm(null, null, null, null, null, null, null, null, counts);
    }

    ReturnDraft draft(Hire hire, String at, Person me, Instant now) {
        Typed typed = new Typed(me);
        Instant when = typed.moment(at + "inAt", inAt, hire.zone());
        BigDecimal shown = typed.exact(at + "hours", hours);
        Integer percent = IssueForm.percent(at + "fuel", fuel, typed);
        Liquid pumped = typed.required(at + "liquid", chosen(), "hire.liquid.choose");
        boolean damaged = DAMAGED.equals(cordIs);
        if (!damaged && !WHOLE.equals(cordIs)) {
            typed.wrong(at + "cordIs", "hire.cord.choose");
        }
        String words = damaged ? typed.required(at + "cord", Typed.text(cord), "hire.cord.words") : null;
        Map<Integer, Integer> counts = new HashMap<>();
        for (Piece piece : hire.kit()) {
            String text = kit == null || piece.ordinal() >= kit.size() ? null : Typed.text(kit.get(piece.ordinal()));
            if (text != null && text.matches("\\d{1,6}")) {
                counts.put(piece.ordinal(), Integer.valueOf(text));
            } else if (piece.quantityOut() > 0) {
                typed.wrong(at + "kit[" + piece.ordinal() + "]", "hire.kit.count", piece.quantityOut());
            }
        }
        typed.refuseIfWrong();
        return new ReturnDraft(
                when == null ? now : when,
                shown,
                percent,
                Typed.text(condition),
                pumped == null ? Liquid.UNKNOWN : pumped,
                Boolean.TRUE.equals(ranDry),
                words,
                counts);
    }

    private @Nullable Liquid chosen() {
        return Stream.of(Liquid.values())
                .filter(each -> each.name().equals(liquid))
                .findFirst()
                .orElse(null);
    }
}
