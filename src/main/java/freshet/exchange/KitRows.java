package freshet.exchange;

import freshet.measures.Quantity;
import freshet.measures.UnitSystem;
import freshet.measures.Usual;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.pumps.Kit;
import freshet.pumps.KitItem;
import freshet.pumps.KitKind;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Rows about what goes with the units, one a piece; the rows of a unit together are its whole kit. */
final class KitRows implements RowKind<KitRows.Piece> {

    /** A piece, as the so-and-so-manieth of so many of its unit. */
    record Piece(long unitId, String tag, int at, KitItem item, int pieces) {}

    private static final Pattern ITEM = Pattern.compile("items\\[(\\d+)]\\.(.*)");
    private static final Pattern KIT = Pattern.compile("rows\\[(\\d+)]\\.(.*)");

    private final Pumps pumps;
    private final Names names;
    private final Map<String, Integer> counted = new HashMap<>();
    private final Map<Row, Integer> places = new HashMap<>();
    private final Map<Long, TreeMap<Integer, KitItem>> read = new LinkedHashMap<>();

    KitRows(Pumps pumps, Names names) {
        this.pumps = pumps;
        this.names = names;
    }

    @Override
    public FileKind kind() {
        return FileKind.KIT;
    }

    @Override
    public List<Column> columns() {
        return List.of(
                Column.needed("tag"),
                Column.needed("piece").oneOf(KitKind.class),
                Column.needed("description"),
                Column.of("bore", Quantity.BORE),
                Column.of("outlet bore", Quantity.BORE),
                Column.of("length", Quantity.LENGTH),
                Column.of("quantity"));
    }

    @Override
    public void lookThrough(List<Row> rows) {
        for (Row row : rows) {
            String tag = row.text("tag");
            if (tag != null) {
                places.put(row, counted.merge(Names.key(tag), 1, Integer::sum) - 1);
            }
        }
    }

    @Override
    public @Nullable String key(Row row) {
        String tag = row.text("tag");
        return tag == null ? null : Names.key(places.get(row), tag);
    }

    @Override
    public String name(Row row) {
        return Written.text(row.text("tag")) + ", " + Written.text(row.text("description"));
    }

    @Override
    public Map<String, Piece> standing() {
        Map<String, Piece> standing = new LinkedHashMap<>();
        for (Unit unit : names.units().byKey().values()) {
            for (int at = 0; at < unit.kit().size(); at++) {
                standing.put(
                        Names.key(at, unit.tag()),
                        new Piece(
                                unit.id(),
                                unit.tag(),
                                at,
                                unit.kit().get(at),
                                unit.kit().size()));
            }
        }
        return standing;
    }

    @Override
    public Piece read(Row row, @Nullable Piece stands) {
        row.needed("tag");
        Unit unit = names.find(row, "tag", FileKind.UNITS, names.units());
        KitItem item = new KitItem(
                row.choice("piece", KitKind.class),
                row.needed("description"),
                row.has("bore") ? row.measure("bore", Usual.BORE) : null,
                row.has("outlet bore") ? row.measure("outlet bore", Usual.BORE) : null,
                row.has("length") ? row.measure("length", Usual.LENGTH) : null,
                quantity(row));
        int at = places.getOrDefault(row, 0);
        if (unit == null) {
            return new Piece(0, "", at, item, 0);
        }
        if (!row.wrong()) {
            read.computeIfAbsent(unit.id(), any -> new TreeMap<>()).put(at, item);
        }
        return new Piece(unit.id(), unit.tag(), at, item, counted.getOrDefault(Names.key(unit.tag()), 0));
    }

    private static int quantity(Row row) {
        Double number = row.number("quantity");
        if (number != null && (number != Math.rint(number) || Math.abs(number) > 1e6)) {
            row.wrong("quantity", "exchange.whole", Written.text(row.text("quantity")));
            return 1;
        }
        return number == null ? 1 : number.intValue();
    }

    @Override
    public Map<String, String> cells(Piece said, UnitSystem system) {
        KitItem item = said.item();
        Map<String, String> cells = new LinkedHashMap<>();
        cells.put("tag", said.tag());
        cells.put("piece", Written.word(item.kind()));
        cells.put("description", Written.text(item.description()));
        cells.put("bore", Written.measure(item.boreMm(), Quantity.BORE, system));
        cells.put("outlet bore", Written.measure(item.outletBoreMm(), Quantity.BORE, system));
        cells.put("length", Written.measure(item.lengthM(), Quantity.LENGTH, system));
        cells.put("quantity", String.valueOf(item.quantity()));
        return cells;
    }

    @Override
    public List<Preview.Difference> differences(Piece before, Piece after, UnitSystem system) {
        List<Preview.Difference> found = new ArrayList<>(RowKind.super.differences(before, after, system));
        if (before.pieces() != after.pieces()) {
            found.add(
                    new Preview.Difference("pieces", String.valueOf(before.pieces()), String.valueOf(after.pieces())));
        }
        return found;
    }

    @Override
    public void take(List<Piece> news, Person by) {
        List<Long> units = news.stream().map(Piece::unitId).distinct().toList();
        List<Kit> kits = units.stream()
                .map(unit -> new Kit(unit, List.copyOf(read.get(unit).values())))
                .toList();
        try {
            pumps.takeInKits(kits, by);
        } catch (Refused refused) {
            throw new Refused(atPieces(news, kits, refused));
        }
    }

    /** The same wrongs at the rows of the pieces, or at the first row of the unit when the piece is no news. */
    private List<Refused.Wrong> atPieces(List<Piece> news, List<Kit> kits, Refused refused) {
        List<Refused.Wrong> wrongs = new ArrayList<>();
        Set<Piece> left = new HashSet<>();
        for (Refused.Wrong wrong : refused.wrongs()) {
            Matcher kit = KIT.matcher(wrong.field());
            if (!kit.matches()) {
                throw refused;
            }
            long unitId = kits.get(Integer.parseInt(kit.group(1))).unitId();
            Matcher item = ITEM.matcher(kit.group(2));
            int at = item.matches() ? List.copyOf(read.get(unitId).keySet()).get(Integer.parseInt(item.group(1))) : -1;
            int row = rowOf(news, unitId, at);
            wrongs.add(new Refused.Wrong(
                    "rows[" + row + "]." + (item.matches() ? item.group(2) : ""), wrong.code(), wrong.arguments()));
            left.add(news.get(row));
        }
        // those rows are left out of the next try, and so must their pieces be
        left.forEach(piece -> read.get(piece.unitId()).remove(piece.at()));
        return wrongs;
    }

    private static int rowOf(List<Piece> news, long unitId, int at) {
        int first = -1;
        for (int row = 0; row < news.size(); row++) {
            Piece piece = news.get(row);
            if (piece.unitId() == unitId && piece.at() == at) {
                return row;
            }
            if (piece.unitId() == unitId && first < 0) {
                first = row;
            }
        }
        return first;
    }

    @Override
    public @Nullable String column(String field, Piece said) {
        return switch (field) {
            case "" -> null;
            case "outletBore" -> "outlet bore";
            default -> field;
        };
    }

    @Override
    public Iterable<Piece> everything() {
        return standing().values();
    }
}
