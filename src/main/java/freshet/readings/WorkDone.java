package freshet.readings;

import freshet.pumps.Ratings;
import freshet.readings.DutyCycle.Stretch;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Starts and run hours of a unit at the moments when its starts were read, in order of time. */
record WorkDone(List<Moment> moments) {

    /** Lifetime totals at a moment; hours only when they were read at about the same time. */
    record Moment(Instant at, BigDecimal starts, @Nullable BigDecimal runHours) {}

    /** The two meters are read on one visit. */
    private static final Duration ONE_VISIT = Duration.ofMinutes(15);
    /** Over less time than this nothing is said about starts an hour. */
    private static final Duration SHORTEST = Duration.ofHours(1);

    static WorkDone between(MeterLog hours, MeterLog starts) {
        List<Moment> moments = new ArrayList<>();
        for (MeterLog.Line line : starts.lines()) {
            if (line.lifetime() != null) {
                moments.add(new Moment(line.at(), line.lifetime(), onTheVisit(hours, line.at())));
            }
        }
        return new WorkDone(moments);
    }

    private static @Nullable BigDecimal onTheVisit(MeterLog hours, Instant at) {
        return hours.lines().stream()
                .filter(line -> line.lifetime() != null)
                .filter(line -> Duration.between(line.at(), at).abs().compareTo(ONE_VISIT) <= 0)
                .min(Comparator.comparing(
                        line -> Duration.between(line.at(), at).abs()))
                .map(MeterLog.Line::lifetime)
                .orElse(null);
    }

    Optional<DutyCycle> cycle(Ratings ratings) {
        List<Stretch> byClock = stretches(moments);
        Optional<Stretch> busiest = byClock.stream().max(Comparator.comparingDouble(Stretch::startsPerHour));
        Optional<Stretch> shortest =
                stretches(moments.stream()
                                .filter(moment -> moment.runHours() != null)
                                .toList())
                        .stream()
                        .filter(stretch -> stretch.minutesPerStart() != null)
                        .min(Comparator.comparingDouble(Stretch::minutesPerStart));
        return busiest.map(most -> new DutyCycle(
                stretch(moments.get(0), moments.get(moments.size() - 1)),
                most,
                shortest.orElse(null),
                ratings.maxStartsPerHour(),
                ratings.minRunMinutesPerStart()));
    }

    /** The stretches between moments that lie an hour apart at least; a moment too near is passed over. */
    private static List<Stretch> stretches(List<Moment> moments) {
        List<Stretch> stretches = new ArrayList<>();
        Moment from = null;
        for (Moment moment : moments) {
            if (from == null) {
                from = moment;
            } else if (Duration.between(from.at(), moment.at()).compareTo(SHORTEST) >= 0) {
                stretches.add(stretch(from, moment));
                from = moment;
            }
        }
        return stretches;
    }

    private static Stretch stretch(Moment from, Moment to) {
        BigDecimal hours = from.runHours() == null || to.runHours() == null
                ? null
                : to.runHours().subtract(from.runHours());
        return new Stretch(from.at(), to.at(), hours, to.starts().subtract(from.starts()));
    }
}
