package freshet.exchange;

import freshet.measures.UnitSystem;
import freshet.people.Person;
import freshet.people.Refused;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * How the rows of one kind of file are read, compared with the register, taken in and written out. Made anew for every pass.
 *
 * @param <D> what a row says
 */
interface RowKind<D> {

    FileKind kind();

    List<Column> columns();

    /** Looks at all rows of the kind before the first is read. */
    default void lookThrough(List<Row> rows) {}

    /** What the row is about, alike for two rows about the same thing; null, and said, when that cannot be told. */
    @Nullable
    String key(Row row);

    /** The name of what the row is about, for people. */
    String name(Row row);

    /** What stands in the register, by key; of the things in the rows at least. */
    Map<String, D> standing();

    /** What a row says; whatever is wrong with it is said at the row. */
    D read(Row row, @Nullable D stands);

    /** The cells that say this, by the name of their column; columns left out are empty. */
    Map<String, String> cells(D said, UnitSystem system);

    /**
     * Takes in what is new or changed, by the door of its room.
     *
     * @throws Refused with wrongs that begin {@code rows[0].}; then nothing of it may be kept
     */
    void take(List<D> news, Person by);

    /** The column that a field of the door is read from; null for the whole row. */
    @Nullable
    String column(String field, D said);

    /** Everything of the kind that stands in the register, as rows. */
    Iterable<D> everything();

    /** In which columns the two differ. */
    default List<Preview.Difference> differences(D before, D after, UnitSystem system) {
        Map<String, String> old = cells(before, system);
        Map<String, String> now = cells(after, system);
        List<Preview.Difference> found = new ArrayList<>();
        for (Column column : columns()) {
            String was = old.getOrDefault(column.name(), "");
            String is = now.getOrDefault(column.name(), "");
            if (column.kept() && !was.equals(is)) {
                found.add(new Preview.Difference(column.name(), was, is));
            }
        }
        return found;
    }
}
