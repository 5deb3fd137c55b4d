package freshet.places;

import freshet.people.Refused;
import freshet.people.Typed;
import java.time.Month;
import java.time.MonthDay;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.context.support.DefaultMessageSourceResolvable;

/** What was typed about one window of a site. */
record WindowRow(
        @Nullable Long id,
        @Nullable WindowKind kind,
        @Nullable String name,
        @Nullable String fromDay,
        @Nullable Month fromMonth,
        @Nullable String toDay,
        @Nullable Month toMonth,
        @Nullable Boolean takeAway) {

    static final WindowRow BLANK = new WindowRow(null, null, null, null, null, null, null, null);

    static WindowRow of(Window window) {
        return new WindowRow(
                window.id(),
                window.kind(),
                window.name(),
                String.valueOf(window.from().getDayOfMonth()),
                window.from().getMonth(),
                String.valueOf(window.to().getDayOfMonth()),
                window.to().getMonth(),
                null);
    }

    /** Nothing that would be missed stands in it, or it was ticked to be taken away. */
    boolean gone() {
        return Boolean.TRUE.equals(takeAway)
                || (Typed.text(name) == null
                        && Typed.text(fromDay) == null
                        && Typed.text(toDay) == null
                        && fromMonth == null
                        && toMonth == null);
    }

    /** The window that was typed; null when something is wrong, which is then among the wrongs. */
    @Nullable
    WindowDraft draft(String prefix, List<Refused.Wrong> wrongs) {
        MonthDay from = monthDay(prefix + "from", fromDay, fromMonth, wrongs);
        MonthDay to = monthDay(prefix + "to", toDay, toMonth, wrongs);
        if (kind == null) {
            wrongs.add(Refused.Wrong.at(prefix + "kind", "places.window.kindMissing"));
        }
        return kind == null || from == null || to == null
                ? null
                : new WindowDraft(id, kind, Typed.textOrEmpty(name), from, to);
    }

    private static @Nullable MonthDay monthDay(
            String field, @Nullable String day, @Nullable Month month, List<Refused.Wrong> wrongs) {
        if (month == null) {
            wrongs.add(Refused.Wrong.at(field + "Month", "places.window.monthMissing"));
            return null;
        }
        String text = Typed.textOrEmpty(day);
        if (!text.matches("\\d{1,2}")) {
            wrongs.add(Refused.Wrong.at(
                    field + "Day", text.isEmpty() ? "places.window.dayMissing" : "places.window.noDay", text));
            return null;
        }
        int number = Integer.parseInt(text);
        // the longest that the month ever is, so 29 February passes
        if (number < 1 || number > month.maxLength()) {
            var name = new DefaultMessageSourceResolvable("places.month." + month);
            wrongs.add(Refused.Wrong.at(field + "Day", "places.window.noSuchDay", name, number));
            return null;
        }
        return MonthDay.of(month, number);
    }
}
