package freshet.jobs;

import freshet.measures.NotAMeasure;
import freshet.measures.Numbers;
import freshet.measures.Quantity;
import freshet.measures.UnitSystem;
import freshet.readings.PieceForm;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Writes a form into the address of its page, so that a variant of it is one link away, and reads bare numbers as they were meant. */
final class JobAddress {

    private final StringBuilder address;

    JobAddress(String path) {
        address = new StringBuilder(path).append("?press=work");
    }

    JobAddress with(String name, @Nullable String value) {
        if (value != null && !value.isBlank()) {
            address.append('&').append(encoded(name)).append('=').append(encoded(value));
        }
        return this;
    }

    JobAddress with(List<PieceForm> pieces) {
        for (int i = 0; i < pieces.size(); i++) {
            PieceForm piece = pieces.get(i);
            String path = "pieces[" + i + "].";
            with(path + "piece", piece.piece());
            with(path + "bore", piece.bore());
            with(path + "toBore", piece.toBore());
            with(path + "length", piece.length());
            with(path + "c", piece.c());
            with(path + "roughness", piece.roughness());
            with(path + "k", piece.k());
        }
        return this;
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }

    @Override
    public String toString() {
        return address.toString();
    }

    /** The system in which the bare numbers of an address were typed; the reader's own when it does not say. */
    static UnitSystem typedIn(@Nullable String units, UnitSystem reader) {
        return units != null && units.equals(reader.other().name()) ? reader.other() : reader;
    }

    /** The text with its unit, so that a reader of the other system reads what was meant; what is no bare number stays as it is. */
    static @Nullable String said(@Nullable String text, Quantity quantity, UnitSystem typedIn, UnitSystem reader) {
        if (text == null || text.isBlank() || typedIn == reader) {
            return text;
        }
        try {
            Numbers.parse(text);
            return text.strip() + " " + quantity.unit(typedIn);
        } catch (NotAMeasure saysItsUnit) {
            return text;
        }
    }

    static List<PieceForm> said(List<PieceForm> pieces, UnitSystem typedIn, UnitSystem reader) {
        return pieces.stream()
                .map(piece -> new PieceForm(
                        piece.piece(),
                        said(piece.bore(), Quantity.BORE, typedIn, reader),
                        said(piece.toBore(), Quantity.BORE, typedIn, reader),
                        said(piece.length(), Quantity.LENGTH, typedIn, reader),
                        piece.c(),
                        said(piece.roughness(), Quantity.BORE, typedIn, reader),
                        piece.k()))
                .toList();
    }
}
