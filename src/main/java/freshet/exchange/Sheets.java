package freshet.exchange;

import freshet.measures.UnitSystem;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Writes rows of one kind as a file that can be taken in again. */
final class Sheets {

    private Sheets() {}

    /** Everything of the kind; of a series of columns as many as are needed. */
    static <D> byte[] written(RowKind<D> kind, UnitSystem system) {
        List<Map<String, String>> rows = new ArrayList<>();
        Set<String> used = new HashSet<>();
        for (D each : kind.everything()) {
            Map<String, String> cells = kind.cells(each, system);
            rows.add(cells);
            cells.forEach((column, text) -> {
                if (!text.isEmpty()) {
                    used.add(column);
                }
            });
        }
        List<Column> columns = kind.columns().stream()
                .filter(column -> !column.further() || used.contains(column.name()))
                .toList();
        return CsvText.write(
                columns.stream().map(column -> column.heading(system)).toList(),
                () -> rows.stream().map(cells -> line(cells, columns)).iterator());
    }

    private static List<String> line(Map<String, String> cells, List<Column> columns) {
        return columns.stream()
                .map(column -> {
                    String text = cells.getOrDefault(column.name(), "");
                    // numbers may begin with a sign
                    return column.quantity() == null ? Written.guarded(text) : text;
                })
                .toList();
    }
}
