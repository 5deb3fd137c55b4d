package freshet.exchange;

import freshet.measures.UnitSystem;
import freshet.people.Person;
import freshet.places.Customer;
import freshet.places.Places;
import freshet.places.Site;
import freshet.places.SiteDraft;
import freshet.places.Window;
import freshet.places.WindowDraft;
import freshet.places.WindowKind;
import java.time.DateTimeException;
import java.time.MonthDay;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Rows about sites with their season windows; every window has a column of its own, and one for its name. */
final class SiteRows implements RowKind<SiteDraft> {

    /** A site may have no more windows. */
    private static final int MOST_WINDOWS = 12;

    private static final Pattern FROM_TO =
            Pattern.compile("(.+?)\\s+(?:to|a|al|-|\u2013)\\s+(.+)", Pattern.CASE_INSENSITIVE);
    private static final Pattern WINDOW = Pattern.compile("windows\\[(\\d+)]\\.(.*)");

    private static final List<Column> COLUMNS = Stream.concat(
                    Stream.of(
                            Column.needed("site"),
                            Column.needed("time zone"),
                            Column.of("address"),
                            Column.of("customer")),
                    Stream.of(WindowKind.values())
                            .flatMap(kind -> Column.series(
                                    MOST_WINDOWS,
                                    n -> Stream.of(Column.of(column(kind, n)), Column.of(column(kind, n) + " name")))))
            .toList();

    private final Places places;
    private final Names names;
    /** Which column each window of a draft came from, to say wrongs there. */
    private final Map<SiteDraft, List<String>> origins = new IdentityHashMap<>();

    SiteRows(Places places, Names names) {
        this.places = places;
        this.names = names;
    }

    private static String column(WindowKind kind, int n) {
        return n == 1 ? Written.word(kind) : Written.word(kind) + " " + n;
    }

    @Override
    public FileKind kind() {
        return FileKind.SITES;
    }

    @Override
    public List<Column> columns() {
        return COLUMNS;
    }

    @Override
    public @Nullable String key(Row row) {
        String name = row.text("site");
        return name == null ? null : Names.key(name);
    }

    @Override
    public String name(Row row) {
        return Written.text(row.text("site"));
    }

    @Override
    public Map<String, SiteDraft> standing() {
        Map<String, SiteDraft> standing = new LinkedHashMap<>();
        names.sites().byKey().forEach((key, site) -> standing.put(key, draft(site)));
        return standing;
    }

    private static SiteDraft draft(Site site) {
        return new SiteDraft(
                site.name(),
                site.zone(),
                site.address(),
                site.customerId(),
                site.windows().stream().map(SiteRows::draft).toList());
    }

    private static WindowDraft draft(Window window) {
        return new WindowDraft(null, window.kind(), window.name(), window.from(), window.to());
    }

    @Override
    public SiteDraft read(Row row, @Nullable SiteDraft stands) {
        Customer customer = names.find(row, "customer", FileKind.CUSTOMERS, names.customers());
        List<String> origin = new ArrayList<>();
        SiteDraft draft = new SiteDraft(
                row.needed("site"),
                zone(row),
                row.text("address", stands == null ? null : stands.address()),
                row.has("customer") || stands == null ? (customer == null ? null : customer.id()) : stands.customerId(),
                windows(row, stands, origin));
        origins.put(draft, origin);
        return draft;
    }

    private static ZoneId zone(Row row) {
        String text = row.needed("time zone");
        if (!text.isEmpty()) {
            try {
                return ZoneId.of(text);
            } catch (DateTimeException unknown) {
                row.wrong("time zone", "places.zone.unknown", text);
            }
        }
        return ZoneOffset.UTC;
    }

    /** The windows in the row; those that stand when the file has no column for any. */
    private static @Nullable List<WindowDraft> windows(Row row, @Nullable SiteDraft stands, List<String> origin) {
        List<WindowDraft> windows = new ArrayList<>();
        boolean anyColumn = false;
        for (WindowKind kind : WindowKind.values()) {
            for (int n = 1; n <= MOST_WINDOWS; n++) {
                String column = column(kind, n);
                anyColumn |= row.has(column);
                WindowDraft window =
                        row.has(column) ? window(row, kind, column, usualName(row, column, kind, n, stands)) : null;
                if (window != null) {
                    windows.add(window);
                    origin.add(column);
                }
            }
        }
        return anyColumn || stands == null ? windows : stands.windows();
    }

    /** The name of a window whose row does not say it: the one it has, or the name of its column. */
    private static String usualName(Row row, String column, WindowKind kind, int n, @Nullable SiteDraft stands) {
        List<WindowDraft> those = stands == null ? List.of() : inOrder(stands, kind);
        return those.size() < n || row.has(column + " name")
                ? row.heading(column).substring(0, 1).toUpperCase(Locale.ROOT)
                        + row.heading(column).substring(1)
                : those.get(n - 1).name();
    }

    private static List<WindowDraft> inOrder(SiteDraft site, WindowKind kind) {
        List<WindowDraft> windows = site.windows() == null ? List.of() : site.windows();
        return windows.stream()
                .filter(window -> window.kind() == kind)
                .sorted(Comparator.comparing(WindowDraft::from).thenComparing(WindowDraft::name))
                .toList();
    }

    private static @Nullable WindowDraft window(Row row, WindowKind kind, String column, String usualName) {
        String name = row.text(column + " name");
        if (row.text(column) == null) {
            if (name != null) {
                row.wrong(column, "exchange.window.missing", name);
            }
            return null;
        }
        return row.read(column, text -> {
            Matcher parts = FROM_TO.matcher(text);
            if (!parts.matches()) {
                throw new Unread("exchange.window.unread", text);
            }
            MonthDay from = Days.monthDay(parts.group(1));
            MonthDay to = Days.monthDay(parts.group(2));
            return new WindowDraft(null, kind, name == null ? usualName : name, from, to);
        });
    }

    @Override
    public Map<String, String> cells(SiteDraft said, UnitSystem system) {
        Map<String, String> cells = new LinkedHashMap<>();
        cells.put("site", Written.text(said.name()));
        cells.put("time zone", said.zone().getId());
        cells.put("address", Written.text(said.address()));
        Long customer = said.customerId();
        cells.put(
                "customer",
                customer == null
                        ? ""
                        : Written.text(names.customers().of(customer).name()));
        for (WindowKind kind : WindowKind.values()) {
            List<WindowDraft> those = inOrder(said, kind);
            for (int n = 1; n <= those.size(); n++) {
                WindowDraft window = those.get(n - 1);
                cells.put(column(kind, n), Days.written(window.from()) + " to " + Days.written(window.to()));
                cells.put(column(kind, n) + " name", Written.text(window.name()));
            }
        }
        return cells;
    }

    @Override
    public void take(List<SiteDraft> news, Person by) {
        places.takeInSites(news, by);
    }

    @Override
    public @Nullable String column(String field, SiteDraft said) {
        Matcher window = WINDOW.matcher(field);
        List<String> origin = origins.getOrDefault(said, List.of());
        if (window.matches() && Integer.parseInt(window.group(1)) < origin.size()) {
            String column = origin.get(Integer.parseInt(window.group(1)));
            return window.group(2).equals("name") ? column + " name" : column;
        }
        return switch (field) {
            case "name" -> "site";
            case "customerId" -> "customer";
            case "windows" -> null;
            default -> field;
        };
    }

    @Override
    public Iterable<SiteDraft> everything() {
        return standing().values();
    }
}
