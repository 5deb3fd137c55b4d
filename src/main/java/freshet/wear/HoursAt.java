package freshet.wear;

import freshet.readings.MeterLog;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Lifetime run hours of a unit at a moment, as far as its meter readings tell.
 *
 * @param hours a straight line between the readings around the moment, or what the reading within a day of it showed
 * @param least hours that it had run for certain
 * @param most hours that it can have run
 */
public record HoursAt(double hours, double least, double most) {

    /** How far outside all readings a moment may lie and still have the hours of the nearest. */
    static final Duration NEAR = Duration.ofDays(1);

    /** The hours at a moment; null when there is no reading on one of its sides, and none within a day of it on the other. */
    static @Nullable HoursAt of(@Nullable MeterLog log, Instant at) {
        MeterLog.Line before = null;
        for (MeterLog.Line line : log == null ? List.<MeterLog.Line>of() : log.lines()) {
            if (line.lifetime() == null) {
                continue;
            }
            double lifetime = line.lifetime().doubleValue();
            if (line.at().equals(at)) {
                return new HoursAt(lifetime, lifetime, lifetime);
            }
            if (line.at().isAfter(at)) {
                return before == null ? ahead(line, at) : between(before, line, at);
            }
            before = line;
        }
        return before == null ? null : behind(before, at);
    }

    private static HoursAt between(MeterLog.Line before, MeterLog.Line after, Instant at) {
        double low = lifetime(before);
        double high = lifetime(after);
        double passed = (double) Duration.between(before.at(), at).toMillis()
                / Duration.between(before.at(), after.at()).toMillis();
        return new HoursAt(low + passed * (high - low), low, high);
    }

    private static @Nullable HoursAt ahead(MeterLog.Line first, Instant at) {
        Duration gap = Duration.between(at, first.at());
        double hours = lifetime(first);
        return gap.compareTo(NEAR) > 0 ? null : new HoursAt(hours, Math.max(0, hours - inHours(gap)), hours);
    }

    private static @Nullable HoursAt behind(MeterLog.Line last, Instant at) {
        Duration gap = Duration.between(last.at(), at);
        double hours = lifetime(last);
        return gap.compareTo(NEAR) > 0 ? null : new HoursAt(hours, hours, hours + inHours(gap));
    }

    private static double inHours(Duration time) {
        return time.toMillis() / 3_600_000.0;
    }

    private static double lifetime(MeterLog.Line line) {
        return line.lifetime() == null ? 0 : line.lifetime().doubleValue();
    }

    /** Whether the readings around leave more room than a day's running. */
    public boolean loose() {
        return most - least > inHours(NEAR);
    }
}
