package freshet.notices;

import java.time.DayOfWeek;
import java.time.LocalTime;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Which mail a person would like. */
public record ChoicesDraft(
        Rhythm rhythm,
        DayOfWeek weekday,
        int sendHour,
        @Nullable LocalTime quietFrom,
        @Nullable LocalTime quietTo,
        boolean everySite,
        Set<Long> siteIds,
        boolean tellOverdue,
        int overdueDays,
        boolean tellDanger) {}
