package freshet.exchange;

import freshet.places.Customer;
import freshet.places.Places;
import freshet.places.Position;
import freshet.places.Site;
import freshet.pumps.Model;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import java.util.Collection;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.function.ToLongFunction;
import org.jspecify.annotations.Nullable;

/**
 * What the names in a file stand for. Each register is read when it is first asked for, which is after the files about it have been
 * taken in; what was not taken in of them is remembered, so that rows which need it wait and are not called wrong.
 */
final class Names {

    /** A register by key and by id. */
    record Register<T>(Map<String, T> byKey, Map<Long, T> byId) {

        static <T> Register<T> of(Collection<T> all, Function<T, String> key, ToLongFunction<T> id) {
            Map<String, T> byKey = new LinkedHashMap<>();
            Map<Long, T> byId = new HashMap<>();
            for (T each : all) {
                byKey.put(key.apply(each), each);
                byId.put(id.applyAsLong(each), each);
            }
            return new Register<>(byKey, byId);
        }

        T of(long id) {
            T found = byId.get(id);
            if (found == null) {
                throw new IllegalStateException("nothing has the id " + id);
            }
            return found;
        }
    }

    private final Places places;
    private final Pumps pumps;
    private final Map<FileKind, Set<String>> notTakenIn = new EnumMap<>(FileKind.class);
    private final Set<FileKind> unread = EnumSet.noneOf(FileKind.class);

    private @Nullable Register<Customer> customers;
    private @Nullable Register<Site> sites;
    private @Nullable Register<Position> positions;
    private @Nullable Register<Model> models;
    private @Nullable Register<Unit> units;

    Names(Places places, Pumps pumps) {
        this.places = places;
        this.pumps = pumps;
    }

    static String key(String name) {
        return name.strip().toLowerCase(Locale.ROOT);
    }

    /** A key of two parts; no name holds the character between them. */
    static String key(Object first, String second) {
        return first + "\n" + key(second);
    }

    /** There is a row about it, which has to be put right first. */
    void notTakenIn(FileKind kind, String key) {
        notTakenIn.computeIfAbsent(kind, any -> new HashSet<>()).add(key);
    }

    /** A file could not be read that may have had rows of this kind; null when it may have had any. */
    void unread(@Nullable FileKind kind) {
        unread.addAll(kind == null ? EnumSet.allOf(FileKind.class) : EnumSet.of(kind));
    }

    Register<Customer> customers() {
        if (customers == null) {
            customers = Register.of(places.customers(), customer -> key(customer.name()), Customer::id);
        }
        return customers;
    }

    Register<Site> sites() {
        if (sites == null) {
            sites = Register.of(places.sites(), site -> key(site.name()), Site::id);
        }
        return sites;
    }

    Register<Position> positions() {
        if (positions == null) {
            Register<Site> at = sites();
            positions = Register.of(
                    places.positions(),
                    position -> key(key(at.of(position.siteId()).name()), position.name()),
                    Position::id);
        }
        return positions;
    }

    Register<Model> models() {
        if (models == null) {
            models = Register.of(pumps.models(), model -> key(model.name()), Model::id);
        }
        return models;
    }

    /** The units in care. */
    Register<Unit> units() {
        if (units == null) {
            units = Register.of(pumps.units(pumps.activeUnitIds()), unit -> key(unit.tag()), Unit::id);
        }
        return units;
    }

    /** What was read is old, because a file about it has been taken in. */
    void forget(FileKind kind) {
        switch (kind) {
            case CUSTOMERS -> customers = null;
            case SITES -> sites = null;
            case POSITIONS -> positions = null;
            case MODELS -> models = null;
            case UNITS, KIT -> units = null;
            case READINGS -> {}
        }
    }

    /** What a cell names; null when it is empty, or unknown, which is then said unless it only has to be put right first. */
    <T> @Nullable T find(Row row, String column, FileKind kind, Register<T> register, Function<String, String> key) {
        String name = row.text(column);
        if (name == null) {
            return null;
        }
        T found = register.byKey().get(key.apply(name));
        if (found == null) {
            boolean comes = unread.contains(kind)
                    || notTakenIn.getOrDefault(kind, Set.of()).contains(key.apply(name));
            if (comes) {
                row.waits();
            } else {
                row.wrong(column, "exchange.unknown." + kind, name);
            }
        }
        return found;
    }

    <T> @Nullable T find(Row row, String column, FileKind kind, Register<T> register) {
        return find(row, column, kind, register, Names::key);
    }
}
