package freshet.pumps;

import freshet.measures.Quantity;
import freshet.measures.UnitSystem;
import freshet.measures.Usual;
import freshet.people.Person;
import freshet.people.Typed;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** What was typed about the kit of a unit; it ends with blank rows. */
record KitForm(
        @Nullable List<Row> items,
        @Nullable String more,
        @Nullable Integer version) {

    /** What was typed about one piece. */
    record Row(
            @Nullable KitKind kind,
            @Nullable String description,
            @Nullable String bore,
            @Nullable String outletBore,
            @Nullable String length,
            @Nullable String quantity,
            @Nullable Boolean takeAway) {

        static final Row BLANK = new Row(null, null, null, null, null, null, null);

        boolean gone() {
            return Boolean.TRUE.equals(takeAway)
                    || (Typed.text(description) == null
                            && Typed.text(bore) == null
                            && Typed.text(outletBore) == null
                            && Typed.text(length) == null);
        }
    }

    KitForm {
        List<Row> rows = new ArrayList<>(items == null ? List.of() : items);
        rows.removeIf(row -> row == null || row.gone());
        int blanks = more != null ? 4 : rows.isEmpty() ? 3 : 1;
        for (int i = 0; i < blanks; i++) {
            rows.add(Row.BLANK);
        }
        items = List.copyOf(rows);
    }

    static KitForm of(Unit unit, UnitSystem system) {
        List<Row> rows = unit.kit().stream()
                .map(item -> new Row(
                        item.kind(),
                        item.description(),
                        text(item.boreMm(), Quantity.BORE, system),
                        text(item.outletBoreMm(), Quantity.BORE, system),
                        text(item.lengthM(), Quantity.LENGTH, system),
                        String.valueOf(item.quantity()),
                        null))
                .toList();
        return new KitForm(rows, null, unit.version());
    }

    private static @Nullable String text(@Nullable Double value, Quantity quantity, UnitSystem system) {
        return value == null ? null : quantity.input(value, system);
    }

    List<Row> rows() {
        return Objects.requireNonNull(items);
    }

    /** The pieces that were typed; refused at each text that cannot be read. */
    List<KitItem> read(List<KitItem> stands, Person me) {
        Typed typed = new Typed(me);
        List<KitItem> read = new ArrayList<>();
        for (int i = 0; i < rows().size(); i++) {
            Row row = rows().get(i);
            if (!row.gone()) {
                read.add(read(row, "items[" + i + "].", i < stands.size() ? stands.get(i) : null, typed));
            }
        }
        typed.refuseIfWrong();
        return read;
    }

    private static KitItem read(Row row, String at, @Nullable KitItem old, Typed typed) {
        KitKind kind = typed.required(at + "kind", row.kind(), "pumps.choose.kit");
        Double count = typed.number(at + "quantity", row.quantity());
        if (count != null && count != Math.rint(count)) {
            typed.wrong(at + "quantity", "pumps.kit.whole");
        }
        return new KitItem(
                kind == null ? KitKind.OTHER : kind,
                Typed.textOrEmpty(row.description()),
                typed.usual(at + "bore", row.bore(), Usual.BORE, old == null ? null : old.boreMm()),
                typed.usual(at + "outletBore", row.outletBore(), Usual.BORE, old == null ? null : old.outletBoreMm()),
                typed.usual(at + "length", row.length(), Usual.LENGTH, old == null ? null : old.lengthM()),
                count == null ? 1 : (int) Math.max(-1, Math.min(count, 100_000)));
    }
}
