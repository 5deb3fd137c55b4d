package freshet.readings;

import freshet.people.Refused;
import java.util.List;

/**
 * What taking in many readings did; when any row is refused, nothing was kept.
 *
 * @param added rows that were new
 * @param same rows that stood there already, value for value
 * @param refused the rows that cannot be, with every reason
 */
public record ReadingsTaken(int added, int same, List<Row> refused) {

    /** One refused row, counted from 0 as it was handed in. */
    public record Row(int index, Refused.Wrong wrong) {}
}
