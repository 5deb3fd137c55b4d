package freshet.offline;

import freshet.readings.MeterLog;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What was typed without a signal, beside what happened meanwhile.
 *
 * @param by who did the other, if one person did
 * @param at when
 * @param code of why a task was withdrawn
 * @param address where the other is to be seen
 * @param place where the unit stands now
 */
public record Beside(
        Instant doneAt,
        boolean mayAdd,
        @Nullable String by,
        @Nullable Instant at,
        @Nullable String code,
        String address,
        String place,
        List<MeterLog.Line> read,
        List<Row> rows) {

    /** One line: its words, or the message key of a field with its number where the form has several; and what each side says. */
    public record Row(
            @Nullable String words,
            @Nullable String key,
            int number,
            @Nullable String mine,
            @Nullable String theirs) {

        public boolean differs() {
            return !java.util.Objects.equals(mine, theirs);
        }
    }

    public List<Row> different() {
        return rows.stream().filter(Row::differs).toList();
    }

    public List<Row> same() {
        return rows.stream().filter(row -> !row.differs()).toList();
    }
}
