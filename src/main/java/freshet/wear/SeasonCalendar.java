package freshet.wear;

import freshet.places.Span;
import freshet.places.Window;
import freshet.places.WindowKind;
import java.time.LocalDate;
import java.util.BitSet;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Which days of the year belong to a site's season: those of its running windows or, where it has none, from the first day of an opening to the last day
 * of the next closing.
 */
final class SeasonCalendar {

    private final List<Window> running;
    private final List<Window> openings;
    private final List<Window> closings;
    private final Map<Integer, BitSet> days = new HashMap<>();

    SeasonCalendar(Collection<Window> windows) {
        running = of(windows, WindowKind.RUNNING);
        openings = of(windows, WindowKind.OPENING);
        closings = of(windows, WindowKind.CLOSING);
    }

    private static List<Window> of(Collection<Window> windows, WindowKind kind) {
        return windows.stream().filter(window -> window.kind() == kind).toList();
    }

    SeasonPart part(LocalDate day) {
        if (running.isEmpty() && (openings.isEmpty() || closings.isEmpty())) {
            return SeasonPart.ALL_YEAR;
        }
        return days.computeIfAbsent(day.getYear(), this::inSeason).get(day.getDayOfYear())
                ? SeasonPart.IN_SEASON
                : SeasonPart.OUT_OF_SEASON;
    }

    /** Days of the season in the year that begins on this day; all of them where there is no season. */
    int seasonDays(LocalDate from) {
        return (int) from.datesUntil(from.plusYears(1))
                .filter(day -> part(day) != SeasonPart.OUT_OF_SEASON)
                .count();
    }

    private BitSet inSeason(int year) {
        LocalDate first = LocalDate.of(year, 1, 1);
        LocalDate last = LocalDate.of(year, 12, 31);
        BitSet set = new BitSet();
        for (Window window : running) {
            window.spans(first, last).forEach(span -> mark(set, year, span.opensOn(), span.dueOn()));
        }
        if (running.isEmpty()) {
            for (Span opening : turns(openings, year - 1, year).toList()) {
                turns(closings, year - 1, year + 1)
                        .map(Span::dueOn)
                        .filter(end -> !end.isBefore(opening.opensOn()))
                        .min(LocalDate::compareTo)
                        .ifPresent(end -> mark(set, year, opening.opensOn(), end));
            }
        }
        return set;
    }

    private static Stream<Span> turns(List<Window> windows, int fromYear, int toYear) {
        return windows.stream()
                .flatMap(window -> Stream.iterate(fromYear, year -> year <= toYear, year -> year + 1)
                        .map(window::startingIn));
    }

    private static void mark(BitSet set, int year, LocalDate from, LocalDate to) {
        for (LocalDate day = from; !day.isAfter(to); day = day.plusDays(1)) {
            if (day.getYear() == year) {
                set.set(day.getDayOfYear());
            }
        }
    }
}
