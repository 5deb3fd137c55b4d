package freshet.board;

import java.time.Period;

/** What an interval of the calendar is told in. */
enum Every {
    DAY,
    WEEK,
    MONTH,
    YEAR;

    static Every of(Period every) {
        if (every.getDays() != 0) {
            return every.getDays() % 7 == 0 ? WEEK : DAY;
        }
        return every.toTotalMonths() % 12 == 0 ? YEAR : MONTH;
    }

    static long count(Period every) {
        return switch (of(every)) {
            case DAY -> every.getDays();
            case WEEK -> every.getDays() / 7;
            case MONTH -> every.toTotalMonths();
            case YEAR -> every.toTotalMonths() / 12;
        };
    }
}
