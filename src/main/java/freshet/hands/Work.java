package freshet.hands;

import java.time.LocalDate;
import java.util.Comparator;

/** One open task as the outlook sees it; {@code minutes} as planned, without what is added for findings. */
record Work(
        long taskId,
        long unitId,
        String tag,
        String title,
        long siteId,
        String siteName,
        LocalDate opensOn,
        LocalDate dueOn,
        int minutes) {

    /** Earliest due first; of one day by tag. */
    static final Comparator<Work> IN_DUE_ORDER =
            Comparator.comparing(Work::dueOn).thenComparing(Work::tag).thenComparing(Work::taskId);
}
