package freshet.exchange;

import freshet.measures.UnitSystem;
import freshet.people.Person;
import freshet.places.Customer;
import freshet.places.CustomerDraft;
import freshet.places.Places;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Rows about customers. */
final class CustomerRows implements RowKind<CustomerDraft> {

    private final Places places;
    private final Names names;

    CustomerRows(Places places, Names names) {
        this.places = places;
        this.names = names;
    }

    @Override
    public FileKind kind() {
        return FileKind.CUSTOMERS;
    }

    @Override
    public List<Column> columns() {
        return List.of(Column.needed("customer"), Column.of("phone"), Column.of("note"));
    }

    @Override
    public @Nullable String key(Row row) {
        String name = row.text("customer");
        return name == null ? null : Names.key(name);
    }

    @Override
    public String name(Row row) {
        return Written.text(row.text("customer"));
    }

    @Override
    public Map<String, CustomerDraft> standing() {
        Map<String, CustomerDraft> standing = new LinkedHashMap<>();
        names.customers().byKey().forEach((key, customer) -> standing.put(key, draft(customer)));
        return standing;
    }

    private static CustomerDraft draft(Customer customer) {
        return new CustomerDraft(customer.name(), customer.phone(), customer.note());
    }

    @Override
    public CustomerDraft read(Row row, @Nullable CustomerDraft stands) {
        return new CustomerDraft(
                row.needed("customer"),
                row.text("phone", stands == null ? null : stands.phone()),
                row.text("note", stands == null ? null : stands.note()));
    }

    @Override
    public Map<String, String> cells(CustomerDraft said, UnitSystem system) {
        return Map.of(
                "customer",
                Written.text(said.name()),
                "phone",
                Written.text(said.phone()),
                "note",
                Written.text(said.note()));
    }

    @Override
    public void take(List<CustomerDraft> news, Person by) {
        places.takeInCustomers(news, by);
    }

    @Override
    public @Nullable String column(String field, CustomerDraft said) {
        return field.equals("name") ? "customer" : field;
    }

    @Override
    public Iterable<CustomerDraft> everything() {
        return standing().values();
    }
}
