package freshet.exchange;

import java.util.List;
import java.util.function.ToIntFunction;
import org.jspecify.annotations.Nullable;

/**
 * What taking in some files does, or would do.
 *
 * @param changes the rows that change what stands in the register
 * @param problems everything to put right; while there is anything, nothing is taken in
 * @param questions what is unusual in rows that are taken in all the same, to be looked at before
 * @param fingerprint the same only for the same files with the same outcome, row for row
 */
public record Preview(
        List<Sheet> sheets, List<Change> changes, List<Problem> problems, List<Problem> questions, String fingerprint) {

    /**
     * One file.
     *
     * @param kind null when it could not be told
     * @param waiting rows that are right but name something that has to be put right first
     */
    public record Sheet(
            String file, @Nullable FileKind kind, int added, int changed, int same, int wrong, int waiting) {

        public int rows() {
            return added + changed + same + wrong + waiting;
        }
    }

    /** A row that changes something, and what. */
    public record Change(String file, int line, String name, List<Difference> differences) {}

    /** A column whose value is another than in the register; an empty text is none. */
    public record Difference(String column, String before, String after) {}

    public boolean clean() {
        return problems.isEmpty();
    }

    /** Everything stands in the register already. */
    public boolean nothingToDo() {
        return clean() && added() == 0 && changed() == 0;
    }

    public int rows() {
        return sum(Sheet::rows);
    }

    public int added() {
        return sum(Sheet::added);
    }

    public int changed() {
        return sum(Sheet::changed);
    }

    public int same() {
        return sum(Sheet::same);
    }

    public int wrong() {
        return sum(Sheet::wrong);
    }

    public int waiting() {
        return sum(Sheet::waiting);
    }

    private int sum(ToIntFunction<Sheet> of) {
        return sheets.stream().mapToInt(of).sum();
    }
}
