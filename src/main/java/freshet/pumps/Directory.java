package freshet.pumps;

import freshet.people.Typed;
import freshet.places.Customer;
import freshet.places.Places;
import freshet.places.Position;
import freshet.places.Site;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The names of places and customers that a person may type or choose; a position goes by "site, position". */
final class Directory {

    private final Map<String, String> placeNames = new LinkedHashMap<>();
    private final Map<String, Whereabouts> placeByName = new LinkedHashMap<>();
    private final Map<String, Customer> customerByName = new LinkedHashMap<>();

    private Directory() {}

    static Directory of(Places places) {
        Directory directory = new Directory();
        Map<Long, String> siteNames = new LinkedHashMap<>();
        for (Site site : places.sites()) {
            siteNames.put(site.id(), site.name());
            directory.put(site.name(), Whereabouts.at(site.id()));
        }
        for (Position position : places.positions()) {
            directory.put(
                    siteNames.get(position.siteId()) + ", " + position.name(),
                    new Whereabouts(position.siteId(), position.id(), null));
        }
        places.customers().forEach(customer -> directory.customerByName.put(key(customer.name()), customer));
        return directory;
    }

    private void put(String name, Whereabouts at) {
        placeNames.putIfAbsent(key(name), name);
        placeByName.putIfAbsent(key(name), at);
    }

    List<String> placeNames() {
        return placeNames.values().stream()
                .sorted(String.CASE_INSENSITIVE_ORDER)
                .toList();
    }

    List<String> customerNames() {
        return customerByName.values().stream().map(Customer::name).toList();
    }

    /** The customer of this name; null for nobody, or when there is none, which is then said at the field. */
    @Nullable
    Long customerId(String field, @Nullable String typed, Typed into) {
        String name = Typed.text(typed);
        Customer customer = name == null ? null : customerByName.get(key(name));
        if (name != null && customer == null) {
            into.wrong(field, "pumps.customer.noSuch", name);
        }
        return customer == null ? null : customer.id();
    }

    /** The place of this name; null when there is none, which is then said at the field. */
    @Nullable
    Whereabouts whereabouts(String field, @Nullable String typed, @Nullable String spot, Typed into) {
        String name = Typed.text(typed);
        Whereabouts at = name == null ? null : placeByName.get(key(name));
        if (at == null) {
            into.wrong(field, name == null ? "pumps.place.missing" : "pumps.place.noSuch", name == null ? "" : name);
            return null;
        }
        return new Whereabouts(at.siteId(), at.positionId(), Typed.text(spot));
    }

    private static String key(String name) {
        return name.strip().toLowerCase(Locale.ROOT);
    }
}
