package freshet.rounds;

import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** A round with its stops in order; {@code personId} is null while nobody goes, {@code withdrawn} when it was given up. */
public record Round(
        long id,
        String name,
        LocalDate day,
        @Nullable Long personId,
        @Nullable String personName,
        String madeByName,
        boolean withdrawn,
        int version,
        List<Stop> stops) {

    /** The zone of its first stop, whose calendar its day is of. */
    ZoneId zone() {
        return stops.isEmpty() ? ZoneOffset.UTC : stops.get(0).zone();
    }

    /** Minutes of all stops that are not withdrawn, done ones too. */
    public int minutes() {
        return stops.stream()
                .filter(stop -> stop.state() != StopState.WITHDRAWN)
                .mapToInt(Stop::minutes)
                .sum();
    }

    public int minutesLeft() {
        return stops.stream().filter(Stop::left).mapToInt(Stop::minutes).sum();
    }

    public int done() {
        return (int)
                stops.stream().filter(stop -> stop.state() == StopState.DONE).count();
    }

    /** What is left, in order; where nobody could get in comes again after the others. */
    public List<Stop> left() {
        return stops.stream()
                .filter(Stop::left)
                .sorted(Comparator.comparing(Stop::state).thenComparing(Stop::place))
                .toList();
    }

    public Optional<Stop> next() {
        return left().stream().findFirst();
    }
}
