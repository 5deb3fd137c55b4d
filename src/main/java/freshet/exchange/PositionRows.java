package freshet.exchange;

import freshet.measures.UnitSystem;
import freshet.people.Person;
import freshet.places.Places;
import freshet.places.Position;
import freshet.places.PositionDraft;
import freshet.places.PositionKind;
import freshet.places.Site;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Rows about positions. */
final class PositionRows implements RowKind<PositionDraft> {

    private final Places places;
    private final Names names;

    PositionRows(Places places, Names names) {
        this.places = places;
        this.names = names;
    }

    @Override
    public FileKind kind() {
        return FileKind.POSITIONS;
    }

    @Override
    public List<Column> columns() {
        return List.of(
                Column.needed("site"),
                Column.needed("position"),
                Column.needed("position kind").oneOf(PositionKind.class),
                Column.of("note"));
    }

    @Override
    public @Nullable String key(Row row) {
        String site = row.text("site");
        String position = row.text("position");
        return site == null || position == null ? null : Names.key(Names.key(site), position);
    }

    @Override
    public String name(Row row) {
        return Written.text(row.text("position")) + ", " + Written.text(row.text("site"));
    }

    @Override
    public Map<String, PositionDraft> standing() {
        Map<String, PositionDraft> standing = new LinkedHashMap<>();
        names.positions().byKey().forEach((key, position) -> standing.put(key, draft(position)));
        return standing;
    }

    private static PositionDraft draft(Position position) {
        return new PositionDraft(position.siteId(), position.name(), position.kind(), position.note());
    }

    @Override
    public PositionDraft read(Row row, @Nullable PositionDraft stands) {
        row.needed("site");
        Site site = names.find(row, "site", FileKind.SITES, names.sites());
        return new PositionDraft(
                site == null ? 0 : site.id(),
                row.needed("position"),
                row.choice("position kind", PositionKind.class),
                row.text("note", stands == null ? null : stands.note()));
    }

    @Override
    public Map<String, String> cells(PositionDraft said, UnitSystem system) {
        return Map.of(
                "site",
                Written.text(names.sites().of(said.siteId()).name()),
                "position",
                Written.text(said.name()),
                "position kind",
                Written.word(said.kind()),
                "note",
                Written.text(said.note()));
    }

    @Override
    public void take(List<PositionDraft> news, Person by) {
        places.takeInPositions(news, by);
    }

    @Override
    public @Nullable String column(String field, PositionDraft said) {
        return field.equals("name") ? "position" : field;
    }

    @Override
    public Iterable<PositionDraft> everything() {
        return new TreeMap<>(standing()).values();
    }
}
