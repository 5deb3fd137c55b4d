package freshet.board;

import freshet.board.Wanted.Days;
import freshet.rules.CareRule;
import java.time.LocalDate;
import java.time.MonthDay;
import org.jspecify.annotations.Nullable;

/** Moves due days to where the work can be done, and out of a season in which it was done already. */
record Shift(CareRule rule, SiteDays site) {

    Days of(Days days, @Nullable LocalDate lastDone) {
        Days moved = intoAccess(days);
        if (rule.oncePerSeason() && lastDone != null && !lastDone.isBefore(site.seasonOf(moved.dueOn()))) {
            LocalDate next = site.seasonAfter(moved.dueOn());
            moved = intoAccess(moved.on(next, next.plusDays(rule.opensDaysBefore())));
        }
        return moved;
    }

    private Days intoAccess(Days days) {
        MonthDay from = rule.accessFrom();
        MonthDay to = rule.accessTo();
        if (from == null || to == null) {
            return days;
        }
        boolean wraps = to.isBefore(from);
        int year = days.dueOn().getYear();
        for (int y = year - 1; ; y++) {
            LocalDate first = from.atYear(y);
            LocalDate last = to.atYear(wraps ? y + 1 : y);
            if (days.dueOn().isBefore(first)) {
                LocalDate due = first.plusDays(rule.opensDaysBefore());
                return days.on(first, due.isAfter(last) ? last : due);
            }
            if (!days.dueOn().isAfter(last)) {
                return days.opensOn().isBefore(first) ? days.on(first, days.dueOn()) : days;
            }
        }
    }
}
