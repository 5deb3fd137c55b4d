package freshet.places;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A yard, building or plot with its own time zone and its windows of the year; {@code customerId} is null when it is our own. */
public record Site(
        long id,
        String name,
        ZoneId zone,
        @Nullable String address,
        @Nullable Long customerId,
        @Nullable String customerName,
        List<Window> windows,
        int version) {

    /** Today at the site. */
    public LocalDate today(Clock clock) {
        return LocalDate.ofInstant(clock.instant(), zone);
    }
}
