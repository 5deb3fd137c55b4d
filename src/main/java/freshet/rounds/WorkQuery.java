package freshet.rounds;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** Which work left is asked for: of one site or all, of one person or all, due in the week of that Monday or within so many days. */
public record WorkQuery(
        @Nullable Long siteId,
        @Nullable Long personId,
        @Nullable LocalDate monday,
        int days,
        int page,
        int size) {

    public static WorkQuery of(@Nullable Long siteId, @Nullable LocalDate monday, int page) {
        return new WorkQuery(siteId, null, monday, 28, page, 100);
    }

    /** What a person has been given and may do now or in two weeks. */
    public static WorkQuery assignedTo(long personId, int size) {
        return new WorkQuery(null, personId, null, 14, 0, size);
    }
}
