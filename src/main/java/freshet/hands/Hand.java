package freshet.hands;

import java.time.LocalDate;
import java.time.temporal.IsoFields;
import java.util.List;
import java.util.Set;

/** What a person has for care work: minutes a week, but none in the weeks off (their Mondays); {@code version} -1 is nothing written. */
public record Hand(long personId, String name, int minutesAWeek, Set<LocalDate> weeksOff, int version) {

    /** Minutes in the ISO week that begins on that Monday. */
    public int minutesIn(LocalDate monday) {
        return weeksOff.contains(monday) ? 0 : minutesAWeek;
    }

    /** The numbers of the ISO weeks off from that Monday on. */
    public List<Integer> offFrom(LocalDate monday) {
        return weeksOff.stream()
                .filter(week -> !week.isBefore(monday))
                .sorted()
                .map(week -> week.get(IsoFields.WEEK_OF_WEEK_BASED_YEAR))
                .toList();
    }
}
