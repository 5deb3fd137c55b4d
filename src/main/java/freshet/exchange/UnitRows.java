package freshet.exchange;

import freshet.measures.UnitSystem;
import freshet.people.Person;
import freshet.places.Customer;
import freshet.places.Position;
import freshet.places.Site;
import freshet.pumps.Model;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import freshet.pumps.UnitArrival;
import freshet.pumps.UnitDraft;
import freshet.pumps.Whereabouts;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Rows about units: what they are, whose, and where they stand. */
final class UnitRows implements RowKind<UnitArrival> {

    private static final Map<String, String> FIELDS = Map.of(
            "modelId", "model",
            "customerId", "customer",
            "siteId", "site",
            "positionId", "position",
            "inCareFrom", "in care from");

    private final Pumps pumps;
    private final Names names;

    UnitRows(Pumps pumps, Names names) {
        this.pumps = pumps;
        this.names = names;
    }

    @Override
    public FileKind kind() {
        return FileKind.UNITS;
    }

    @Override
    public List<Column> columns() {
        return List.of(
                Column.needed("tag"),
                Column.of("serial"),
                Column.needed("model"),
                Column.needed("site"),
                Column.of("position"),
                Column.of("spot"),
                Column.of("customer"),
                Column.needed("in care from"),
                Column.of("note"));
    }

    @Override
    public @Nullable String key(Row row) {
        String tag = row.text("tag");
        return tag == null ? null : Names.key(tag);
    }

    @Override
    public String name(Row row) {
        return Written.text(row.text("tag"));
    }

    @Override
    public Map<String, UnitArrival> standing() {
        Map<String, UnitArrival> standing = new LinkedHashMap<>();
        names.units().byKey().forEach((key, unit) -> standing.put(key, arrival(unit)));
        return standing;
    }

    private static UnitArrival arrival(Unit unit) {
        return new UnitArrival(
                new UnitDraft(
                        unit.tag(),
                        unit.serial(),
                        unit.model().id(),
                        unit.customerId(),
                        unit.inCareFrom(),
                        unit.note()),
                unit.stand().whereabouts());
    }

    @Override
    public UnitArrival read(Row row, @Nullable UnitArrival stands) {
        UnitDraft before = stands == null ? null : stands.unit();
        String tag = row.needed("tag");
        row.needed("model");
        Model model = names.find(row, "model", FileKind.MODELS, names.models());
        Customer customer = names.find(row, "customer", FileKind.CUSTOMERS, names.customers());
        row.needed("in care from");
        LocalDate from = row.date("in care from");
        String serial = row.text("serial", before == null ? null : before.serial());
        if (serial != null && before != null && before.serial() != null && !serial.equals(before.serial())) {
            row.wrong("tag", "exchange.tag.otherUnit", tag, before.serial(), serial);
        }
        UnitDraft unit = new UnitDraft(
                tag,
                serial,
                model == null ? 0 : model.id(),
                row.has("customer") || before == null ? (customer == null ? null : customer.id()) : before.customerId(),
                from == null ? LocalDate.EPOCH : from,
                row.text("note", before == null ? null : before.note()));
        return new UnitArrival(unit, whereabouts(row, stands == null ? null : stands.at()));
    }

    private Whereabouts whereabouts(Row row, @Nullable Whereabouts before) {
        row.needed("site");
        Site site = names.find(row, "site", FileKind.SITES, names.sites());
        if (site == null) {
            return Whereabouts.at(0);
        }
        Position position = names.find(
                row,
                "position",
                FileKind.POSITIONS,
                names.positions(),
                name -> Names.key(Names.key(site.name()), name));
        Long positionId = position == null ? null : Long.valueOf(position.id());
        // a place at another site is another place altogether
        boolean stays = before != null && before.siteId() == site.id();
        return new Whereabouts(
                site.id(),
                row.has("position") || !stays ? positionId : before.positionId(),
                row.has("spot") || !stays ? row.text("spot") : before.spot());
    }

    @Override
    public Map<String, String> cells(UnitArrival said, UnitSystem system) {
        UnitDraft unit = said.unit();
        Long position = said.at().positionId();
        Long customer = unit.customerId();
        Map<String, String> cells = new LinkedHashMap<>();
        cells.put("tag", unit.tag());
        cells.put("serial", Written.text(unit.serial()));
        cells.put("model", Written.text(names.models().of(unit.modelId()).name()));
        cells.put("site", Written.text(names.sites().of(said.at().siteId()).name()));
        cells.put(
                "position",
                position == null
                        ? ""
                        : Written.text(names.positions().of(position).name()));
        cells.put("spot", Written.text(said.at().spot()));
        cells.put(
                "customer",
                customer == null
                        ? ""
                        : Written.text(names.customers().of(customer).name()));
        cells.put("in care from", unit.inCareFrom().toString());
        cells.put("note", Written.text(unit.note()));
        return cells;
    }

    @Override
    public void take(List<UnitArrival> news, Person by) {
        pumps.takeInUnits(news, by);
    }

    @Override
    public @Nullable String column(String field, UnitArrival said) {
        return FIELDS.getOrDefault(field, field);
    }

    @Override
    public Iterable<UnitArrival> everything() {
        return standing().values();
    }
}
