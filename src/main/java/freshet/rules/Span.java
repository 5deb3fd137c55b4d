package freshet.rules;

import java.time.Period;

/** What an interval of the calendar is counted in. */
enum Span {
    DAY,
    WEEK,
    MONTH,
    YEAR;

    /** The widest in which the period is a whole count; a period of 14 days counts in weeks, as a year is no whole count of days. */
    static Span of(Period every) {
        if (every.getDays() != 0) {
            return every.getDays() % 7 == 0 ? WEEK : DAY;
        }
        return every.getMonths() == 0 ? YEAR : MONTH;
    }

    int count(Period every) {
        return switch (this) {
            case DAY -> every.getDays();
            case WEEK -> every.getDays() / 7;
            case MONTH -> Math.toIntExact(every.toTotalMonths());
            case YEAR -> every.getYears();
        };
    }

    Period times(int count) {
        return switch (this) {
            case DAY -> Period.ofDays(count);
            case WEEK -> Period.ofWeeks(count);
            case MONTH -> Period.ofMonths(count);
            case YEAR -> Period.ofYears(count);
        };
    }
}
