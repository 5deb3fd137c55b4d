package freshet.hire;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * A unit that is to go out.
 *
 * @param hirer a customer's name, or anybody's
 * @param outAt to the minute
 * @param takenBy who takes it along and was told
 * @param limitsRead whether the limits of a unit that has some were read to that person
 * @param kit the lines of the unit's kit list that go with it, by their place in it
 */
public record IssueDraft(
        long unitId,
        String hirer,
        @Nullable String phone,
        Instant outAt,
        LocalDate dueBackOn,
        @Nullable BigDecimal hours,
        @Nullable Integer fuel,
        @Nullable String condition,
        String takenBy,
        boolean limitsRead,
        Set<Caution> told,
        Set<Integer> kit) {

    public IssueDraft {
        outAt = outAt.truncatedTo(ChronoUnit.MINUTES);
    }
}
