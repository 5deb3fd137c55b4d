package freshet.reliability;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * How many events a repairable unit has had on average by given hours: the mean cumulative function.
 *
 * <p>A unit is at risk up to and including its end; several events of one unit at the same hours all count. Robust variance of Lawless and Nadeau,
 * Technometrics 37 (1995) 158-168 (general knowledge, not re-read), limits on the scale of the logarithm.
 *
 * @param units in the fleet
 * @param events of all units
 * @param table one row for each time of an event, rising
 */
public record Recurrence(int units, int events, List<Row> table) {

    /**
     * A repairable unit watched from new.
     *
     * @param eventHours 0 to endHours each, in any order
     * @param endHours 0 to 1e9 h
     */
    public record WatchedUnit(List<Double> eventHours, double endHours) {}

    /**
     * The curve at one time; error and limits are null for a fleet of one unit, whose spread between units nobody knows.
     *
     * @param atRisk units still watched
     * @param meanCumulative events per unit from new
     */
    public record Row(
            double hours,
            int atRisk,
            int events,
            double meanCumulative,
            @Nullable Double standardError,
            @Nullable Double lower,
            @Nullable Double upper) {}

    private static final int MOST_UNITS = 100_000;
    private static final int MOST_EVENTS = 1_000_000;

    /** A variance this small beside the squares it is the difference of is their rounding. */
    private static final double ROUNDING = 1e-13;

    private record Event(double hours, int unit) {}

    /**
     * Estimates the curve.
     *
     * @param units 1 to 100 000 with at most 1 000 000 events together
     * @param level of confidence, 0.5 to 0.999999
     * @throws OutOfRange for a number outside its range
     */
    public static Recurrence of(List<WatchedUnit> units, double level) {
        List<WatchedUnit> fleet = checked(units);
        Limits.level(level);
        List<Event> events = IntStream.range(0, fleet.size())
                .boxed()
                .flatMap(unit -> fleet.get(unit).eventHours.stream().map(hours -> new Event(hours, unit)))
                .sorted((a, b) -> Double.compare(a.hours, b.hours))
                .toList();
        return new Recurrence(fleet.size(), events.size(), new Curve(fleet, level).rows(events));
    }

    static List<WatchedUnit> checked(List<WatchedUnit> units) {
        List<WatchedUnit> fleet = Limits.list("units", units, 1, MOST_UNITS);
        int total = 0;
        for (int i = 0; i < fleet.size(); i++) {
            String unit = "units[" + i + "]";
            double end = Limits.hours(unit + ".endHours", fleet.get(i).endHours);
            List<Double> events = Limits.list(unit + ".eventHours", fleet.get(i).eventHours, 0, MOST_EVENTS - total);
            total += events.size();
            for (int j = 0; j < events.size(); j++) {
                Limits.upTo(unit + ".eventHours[" + j + "]", events.get(j), 0, end, "h", "the unit's end");
            }
        }
        return fleet;
    }

    /**
     * The sums behind the curve while hours rise. A unit's term of the variance is (own events)/(units then at risk) less the like share of all
     * events; while it is watched the second part, common, is the same for all such units.
     */
    private static final class Curve {

        private final int[] byEnd;
        private final double[] ends;
        private final double[] own;
        private final double z;
        private int ended;
        private double ownSum;
        private double ownSquares;
        private double common;
        private double endedSquares;
        private double mean;

        Curve(List<WatchedUnit> fleet, double level) {
            this.ends = fleet.stream().mapToDouble(WatchedUnit::endHours).toArray();
            this.byEnd = IntStream.range(0, ends.length)
                    .boxed()
                    .sorted((a, b) -> Double.compare(ends[a], ends[b]))
                    .mapToInt(Integer::intValue)
                    .toArray();
            this.own = new double[ends.length];
            this.z = Quantiles.normalTwoSided(level);
        }

        List<Row> rows(List<Event> events) {
            List<Row> rows = new ArrayList<>();
            for (int i = 0, next; i < events.size(); i = next) {
                double hours = events.get(i).hours;
                next = i;
                while (next < events.size() && events.get(next).hours == hours) {
                    next++;
                }
                rows.add(row(hours, events.subList(i, next)));
            }
            return List.copyOf(rows);
        }

        private Row row(double hours, List<Event> now) {
            while (ended < byEnd.length && ends[byEnd[ended]] < hours) {
                double share = own[byEnd[ended++]];
                endedSquares += (share - common) * (share - common);
                ownSum -= share;
                ownSquares -= share * share;
            }
            int atRisk = ends.length - ended;
            for (Event event : now) {
                double before = own[event.unit];
                double after = before + 1.0 / atRisk;
                own[event.unit] = after;
                ownSum += after - before;
                ownSquares += after * after - before * before;
            }
            common += (double) now.size() / atRisk / atRisk;
            mean += (double) now.size() / atRisk;
            if (ends.length == 1) {
                return new Row(hours, atRisk, now.size(), mean, null, null, null);
            }
            double squares = atRisk * common * common;
            double watched = ownSquares - 2 * common * ownSum + squares;
            double variance = endedSquares + (watched > ROUNDING * (ownSquares + squares) ? watched : 0);
            double se = Math.sqrt(variance);
            double factor = Math.exp(z * se / mean);
            return new Row(hours, atRisk, now.size(), mean, se, mean / factor, mean * factor);
        }
    }
}
