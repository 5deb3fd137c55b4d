package freshet.places;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.List;

/**
 * A stretch of every year at a site, both days included. One whose end lies before its start passes 31 December; 29 February is
 * read as 28 February in a common year.
 */
public record Window(long id, long siteId, WindowKind kind, String name, MonthDay from, MonthDay to) {

    /** Whether it passes the end of the year. */
    public boolean wraps() {
        return to.isBefore(from);
    }

    /** The turn that opens in the given year. */
    public Span startingIn(int year) {
        return new Span(this, year, from.atYear(year), to.atYear(wraps() ? year + 1 : year));
    }

    /** The turns that share at least one day with the given days, both included, earliest first. */
    public List<Span> spans(LocalDate first, LocalDate last) {
        List<Span> spans = new ArrayList<>();
        for (int year = first.getYear() - 1; year <= last.getYear(); year++) {
            Span span = startingIn(year);
            if (!span.dueOn().isBefore(first) && !span.opensOn().isAfter(last)) {
                spans.add(span);
            }
        }
        return spans;
    }

    /** Whether some day of some year belongs to both, or to two turns of the same window. */
    boolean overlaps(Window other) {
        // eight years hold every pairing of leap and common years that calendars of 1904 to 2096 have
        for (int year = 2023; year <= 2030; year++) {
            Span mine = startingIn(year);
            for (int its = year - 1; its <= year + 1; its++) {
                Span theirs = other.startingIn(its);
                boolean same = equals(other) && its == year;
                if (!same
                        && !mine.opensOn().isAfter(theirs.dueOn())
                        && !theirs.opensOn().isAfter(mine.dueOn())) {
                    return true;
                }
            }
        }
        return false;
    }
}
