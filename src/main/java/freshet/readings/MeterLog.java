package freshet.readings;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * All that the meters of one kind have shown on one unit, oldest first.
 *
 * <p>Lifetime is all meters together: what the first meter showed when it was first seen, and every rise since, on whichever
 * meter. A meter that was fitted in place of another adds only what it rises.
 *
 * @param fittedAt since when the present meter is on; null when the unit has none
 * @param rollsOverAt the value at which the present meter starts again from 0, where known
 */
public record MeterLog(
        long unitId,
        MeterKind kind,
        List<Line> lines,
        @Nullable Instant fittedAt,
        @Nullable BigDecimal rollsOverAt) {

    /** What a line of the log is about. */
    public enum What {
        FITTED,
        READ,
        REMOVED,
        WITHDRAWN
    }

    /**
     * One line: the meter, what it showed, how far it rose since the line before, and the lifetime then.
     *
     * @param readingId null for the fitting and removal of a meter
     * @param rise null on a meter's first line and on a withdrawn reading
     * @param lifetime null on a withdrawn reading
     * @param note what was noted; the reason, on a withdrawn reading
     */
    public record Line(
            What what,
            Instant at,
            BigDecimal value,
            boolean rolledOver,
            @Nullable Long readingId,
            @Nullable BigDecimal rise,
            @Nullable BigDecimal lifetime,
            @Nullable String note,
            @Nullable Long recordedBy) {}

    /** The last line that counts, if there is any. */
    public @Nullable Line last() {
        for (int i = lines.size() - 1; i >= 0; i--) {
            if (lines.get(i).what() != What.WITHDRAWN) {
                return lines.get(i);
            }
        }
        return null;
    }

    /** Lifetime total as last read; null when nothing was. */
    public @Nullable BigDecimal lifetime() {
        Line last = last();
        return last == null ? null : last.lifetime();
    }

    /**
     * Lifetime total at a moment, a straight line between the readings around it.
     *
     * @return null before the first line and after the last
     */
    public @Nullable Double lifetimeAt(Instant at) {
        Line before = null;
        for (Line line : lines) {
            if (line.lifetime() == null) {
                continue;
            }
            if (line.at().equals(at)) {
                return line.lifetime().doubleValue();
            }
            if (line.at().isAfter(at)) {
                return before == null ? null : between(before, line, at);
            }
            before = line;
        }
        return null;
    }

    private static double between(Line before, Line after, Instant at) {
        double passed = (double) (at.toEpochMilli() - before.at().toEpochMilli())
                / (after.at().toEpochMilli() - before.at().toEpochMilli());
        double low = before.lifetime().doubleValue();
        return low + passed * (after.lifetime().doubleValue() - low);
    }
}
