package freshet.exchange;

import freshet.measures.NotAMeasure;
import freshet.measures.Quantity;
import freshet.measures.UnitSystem;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** The heading of a file, once it is known of what kind the file is: where each column stands, and in which unit. */
final class Heading {

    private final Map<String, Integer> places = new HashMap<>();
    private final Map<String, String> units = new HashMap<>();
    private final Map<String, Column> columns;

    private final Table.Line line;
    private final FileWords words;

    private Heading(List<Column> columns, Table.Line line, FileWords words) {
        this.line = line;
        this.words = words;
        this.columns = columns.stream()
                .collect(Collectors.toMap(Column::name, column -> column, (a, b) -> a, LinkedHashMap::new));
    }

    /** The kind that this heading fits best: fewest columns unknown or missing; none when it fits no kind at all. */
    static <K extends RowKind<?>> Optional<K> kindOf(Table table, Collection<K> kinds) {
        List<String> names = table.heading().cells().stream()
                .map(Column::plain)
                .filter(name -> !name.isEmpty())
                .toList();
        return kinds.stream()
                .filter(kind -> kind.columns().stream().anyMatch(column -> names.contains(column.name())))
                .min(Comparator.comparingLong(kind -> misfits(names, kind.columns())));
    }

    private static long misfits(List<String> names, List<Column> columns) {
        List<String> known = columns.stream().map(Column::name).toList();
        return names.stream().filter(name -> !known.contains(name)).count()
                + columns.stream()
                        .filter(column -> column.required() && !names.contains(column.name()))
                        .count();
    }

    /** The heading read as one of this kind; null, with the problems said, when it is none. */
    static @Nullable Heading of(Table table, RowKind<?> kind, FileWords words, Consumer<Problem> problems) {
        Heading heading = new Heading(kind.columns(), table.heading(), words);
        int[] wrong = {0};
        Consumer<Problem> counted = problem -> {
            wrong[0]++;
            problems.accept(problem);
        };
        for (int at = 0; at < table.heading().cells().size(); at++) {
            String typed = table.heading().cell(at).strip();
            if (!typed.isEmpty()) {
                heading.place(table, typed, at, kind.kind(), counted);
            }
        }
        for (Column column : kind.columns()) {
            if (column.required() && !heading.places.containsKey(column.name())) {
                counted.accept(Problem.at(
                        table.file(),
                        table.heading().number(),
                        column.name(),
                        "exchange.heading.missing",
                        words.heading(column.name()),
                        words.word(kind.kind().word())));
            }
        }
        return wrong[0] > 0 ? null : heading;
    }

    private void place(Table table, String typed, int at, FileKind kind, Consumer<Problem> problems) {
        Column column = columns.get(Column.plain(typed));
        String unit = Column.bracketed(typed);
        int line = table.heading().number();
        if (column == null) {
            String known = columns.values().stream()
                    .filter(each -> !each.further())
                    .map(each -> words.heading(each.name()))
                    .collect(Collectors.joining(", "));
            problems.accept(Problem.at(
                    table.file(), line, typed, "exchange.heading.unknown", typed, words.word(kind.word()), known));
        } else if (places.putIfAbsent(column.name(), at) != null) {
            problems.accept(
                    Problem.at(table.file(), line, typed, "exchange.heading.twice", words.heading(column.name())));
        } else if (unit != null && !isUnit(column, unit)) {
            problems.accept(
                    Problem.at(table.file(), line, typed, "exchange.heading.unit", unit, words.heading(column.name())));
        } else if (unit != null) {
            units.put(column.name(), unit);
        }
    }

    private static boolean isUnit(Column column, String unit) {
        Quantity quantity = column.quantity();
        if (quantity == null) {
            return unit.equalsIgnoreCase(column.word());
        }
        try {
            return Double.isFinite(quantity.parse("1 " + unit, UnitSystem.SI));
        } catch (NotAMeasure no) {
            return false;
        }
    }

    boolean has(String column) {
        return places.containsKey(column);
    }

    /** Where the column stands; -1 when it does not. */
    int place(String column) {
        return places.getOrDefault(column, -1);
    }

    Column column(String name) {
        return columns.get(name);
    }

    /** The unit in which bare numbers of the column are; null when none is said. */
    @Nullable
    String unit(String column) {
        String said = units.get(column);
        return said == null ? columns.get(column).onlyUnit() : said;
    }

    /** How many cells it has, empty ones too. */
    int width() {
        return line.cells().size();
    }

    /** Whether the cells at this place of every row stand under a heading. */
    boolean named(int at) {
        return !line.cell(at).isBlank();
    }
}
