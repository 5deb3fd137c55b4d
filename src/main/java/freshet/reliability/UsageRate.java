package freshet.reliability;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * How many hours a day a unit runs in each period of the year (month, in season or out, or one period for all), from dated readings of its lifetime
 * hours, and when it may reach given hours.
 *
 * <p>Hours between two readings have expectation Σ rate × days of each period and a variance proportional to it (quasi-Poisson; McCullagh and Nelder,
 * Generalized Linear Models, chapter 9, general knowledge, not re-read); rates of largest likelihood by expectation-maximisation, so that a reading
 * that spans two periods is shared out by their rates and not by their days. A period without readings takes the mean rate of all days.
 */
public final class UsageRate<P extends Comparable<P>> {

    /**
     * Lifetime hours at the end of a day.
     *
     * @param date in the years 1900 to 2200
     * @param runHours 0 to 1e9 h, all meters of the unit together, never falling
     */
    public record MeterReading(LocalDate date, double runHours) {}

    /** Use in one period: days observed and hours run per day. */
    public record PeriodUse<P>(P period, int days, double runHoursPerDay) {}

    /**
     * When hours are reached.
     *
     * @param expected null when not within a hundred years at these rates
     * @param earliest by the upper band of use; null without enough readings
     * @param latest by the lower band of use; null also when that never gets there
     * @param assumed periods on the way for which there was no reading
     */
    public record Arrival<P>(
            @Nullable LocalDate expected,
            @Nullable LocalDate earliest,
            @Nullable LocalDate latest,
            List<P> assumed) {}

    private static final int MOST_DAYS_AHEAD = 36_525;
    private static final int MOST_STEPS = 1000;
    private static final double STEP_TOLERANCE = 1e-12;

    /** Days of each period between two readings, and the hours run. */
    private record Span<P>(Map<P, Integer> days, double hours) {}

    private final List<MeterReading> readings;
    private final Function<LocalDate, P> period;
    private final List<Span<P>> spans = new ArrayList<>();
    private final SortedMap<P, Integer> days = new TreeMap<>();
    private final SortedMap<P, Double> rates = new TreeMap<>();

    private UsageRate(List<MeterReading> readings, Function<LocalDate, P> period) {
        this.readings = readings;
        this.period = period;
        for (int i = 1; i < readings.size(); i++) {
            addSpan(readings.get(i - 1), readings.get(i));
        }
        fitRates();
    }

    /**
     * Learns the rates.
     *
     * @param readings 1 to 100 000, dates rising; of several on one day the last counts
     * @param period of a day, such as {@code LocalDate::getMonth}; never null
     * @throws OutOfRange for a date or number outside its range, hours that fall, or more hours than have passed
     */
    public static <P extends Comparable<P>> UsageRate<P> of(
            List<MeterReading> readings, Function<LocalDate, P> period) {
        List<MeterReading> distinct = new ArrayList<>();
        MeterReading before = null;
        List<MeterReading> given = Limits.list("readings", readings, 1, 100_000);
        for (int i = 0; i < given.size(); i++) {
            MeterReading reading = given.get(i);
            check("readings[" + i + "]", before, reading);
            if (before != null && before.date.equals(reading.date)) {
                distinct.remove(distinct.size() - 1);
            }
            distinct.add(reading);
            before = reading;
        }
        return new UsageRate<>(List.copyOf(distinct), period);
    }

    private static void check(String field, @Nullable MeterReading before, MeterReading reading) {
        Limits.given(field + ".date", reading.date);
        Limits.within(field + ".date", reading.date.getYear(), 1900, 2200, "(year)");
        Limits.hours(field + ".runHours", reading.runHours);
        if (before == null) {
            return;
        }
        long passed = reading.date.toEpochDay() - before.date.toEpochDay();
        if (passed < 0) {
            throw new OutOfRange(field + ".date", reading.date + " is before the reading of " + before.date);
        }
        double most = before.runHours + 24.0 * (passed + 1);
        if (!(reading.runHours >= before.runHours && reading.runHours <= most)) {
            throw new OutOfRange(
                    field + ".runHours",
                    Limits.withUnit(reading.runHours, "h") + " is outside "
                            + Limits.withUnit(before.runHours, "h") + " of " + before.date + " to "
                            + Limits.withUnit(most, "h") + ", all hours since");
        }
    }

    private void addSpan(MeterReading from, MeterReading to) {
        Map<P, Integer> counted = new TreeMap<>();
        for (LocalDate day = from.date.plusDays(1); !day.isAfter(to.date); day = day.plusDays(1)) {
            counted.merge(period.apply(day), 1, Integer::sum);
        }
        counted.forEach((key, count) -> days.merge(key, count, Integer::sum));
        spans.add(new Span<>(counted, to.runHours - from.runHours));
    }

    private void fitRates() {
        Double overall = runHoursPerDay();
        if (overall == null) {
            return;
        }
        days.keySet().forEach(key -> rates.put(key, overall));
        double change = 1;
        for (int step = 0; step < MOST_STEPS && change > STEP_TOLERANCE; step++) {
            SortedMap<P, Double> shares = new TreeMap<>();
            for (Span<P> span : spans) {
                double expected = expected(span);
                double ratio = expected > 0 ? span.hours / expected : 0;
                span.days.forEach((key, count) -> shares.merge(key, count * ratio, Double::sum));
            }
            change = 0;
            for (Map.Entry<P, Double> rate : rates.entrySet()) {
                double factor = shares.getOrDefault(rate.getKey(), 0.0) / days.get(rate.getKey());
                change = Math.max(change, Math.abs(rate.getValue() * (factor - 1)));
                rate.setValue(rate.getValue() * factor);
            }
        }
    }

    private double expected(Span<P> span) {
        double sum = 0;
        for (Map.Entry<P, Integer> part : span.days.entrySet()) {
            sum += part.getValue() * rates.get(part.getKey());
        }
        return sum;
    }

    /** Hours per day over all days between first and last reading; null when these are of one day. */
    public @Nullable Double runHoursPerDay() {
        int all = days.values().stream().mapToInt(Integer::intValue).sum();
        return all == 0 ? null : (Double) (observedHours() / all);
    }

    /** Use in each period that has readings, in the order of the periods. */
    public List<PeriodUse<P>> periods() {
        return rates.entrySet().stream()
                .map(rate -> new PeriodUse<>(rate.getKey(), days.get(rate.getKey()), rate.getValue()))
                .toList();
    }

    private double observedHours() {
        return last().runHours - readings.get(0).runHours;
    }

    private MeterReading last() {
        return readings.get(readings.size() - 1);
    }

    /**
     * The day on which hours are reached, and the days between which they are at the level asked. The band of future hours m is t √(φ m (1 + m/H)), φ
     * the dispersion of the spans about their expectations and H the hours observed. Hours reached already are dated between the readings about them.
     *
     * @param runHours 0 to 1e9 h
     * @param level of confidence, 0.5 to 0.999999
     * @throws OutOfRange for a number outside its range
     */
    public Arrival<P> reaching(double runHours, double level) {
        Limits.hours("runHours", runHours);
        Limits.level(level);
        if (runHours <= last().runHours) {
            return reached(runHours);
        }
        Double overall = runHoursPerDay();
        if (overall == null || overall == 0) {
            return new Arrival<>(null, null, null, List.of());
        }
        double needed = (runHours - last().runHours) * (1 - 1e-12);
        Double spread = spread(level);
        SortedSet<P> assumed = new TreeSet<>();
        LocalDate expected = null;
        LocalDate earliest = null;
        LocalDate latest = null;
        double hours = 0;
        for (int i = 1; i <= MOST_DAYS_AHEAD && (expected == null || spread != null && latest == null); i++) {
            LocalDate day = last().date.plusDays(i);
            P key = period.apply(day);
            hours += rates.getOrDefault(key, overall);
            if (expected == null && !rates.containsKey(key)) {
                assumed.add(key);
            }
            double band = spread == null ? 0 : spread * Math.sqrt(hours * (1 + hours / observedHours()));
            earliest = earliest == null && spread != null && hours + band >= needed ? day : earliest;
            expected = expected == null && hours >= needed ? day : expected;
            latest = spread != null && hours - band >= needed ? day : null;
        }
        return new Arrival<>(expected, earliest, latest, List.copyOf(assumed));
    }

    private Arrival<P> reached(double runHours) {
        LocalDate before = readings.get(0).date;
        for (MeterReading reading : readings) {
            if (reading.runHours >= runHours) {
                return new Arrival<>(reading.date, before, reading.date, List.of());
            }
            before = reading.date;
        }
        throw new IllegalStateException("the last reading holds these hours");
    }

    /** t √φ, or null when there are no more spans than rates. */
    private @Nullable Double spread(double level) {
        int df = spans.size() - rates.size();
        if (df < 1) {
            return null;
        }
        double sum = 0;
        for (Span<P> span : spans) {
            double expected = expected(span);
            sum += expected > 0 ? (span.hours - expected) * (span.hours - expected) / expected : 0;
        }
        return Quantiles.studentTwoSided(level, df) * Math.sqrt(sum / df);
    }
}
