package freshet.board;

import freshet.board.Wanted.Days;
import freshet.rules.CareRule;
import freshet.rules.Trigger;
import java.time.LocalDate;
import java.time.Period;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;

/** The days of a fixed interval, all counted from one anchor, so that they never drift: the one that opened last, and the next. */
record FixedDays(UnitFacts facts, CareRule rule, Past past, LocalDate anchor, Period every) {

    static final String KEY = "k:";

    static List<Days> of(UnitFacts facts, CareRule rule, Past past) {
        List<Days> days = new ArrayList<>();
        if (rule.fixed()) {
            for (Trigger trigger : rule.triggers()) {
                if (trigger instanceof Trigger.Calendar calendar) {
                    new FixedDays(facts, rule, past, facts.anchor(rule), calendar.every()).addTo(days);
                }
            }
        }
        return days;
    }

    private void addTo(List<Days> all) {
        long k = newestOpened();
        if (k >= 1 && !past.doneWithin(opens(k), opens(k + 1))) {
            add(k, all);
        }
        add(k + 1, all);
    }

    private void add(long k, List<Days> all) {
        if (due(k).isBefore(facts.inCareFrom())) {
            return;
        }
        Why why = Why.of("fixed." + Every.of(every), Every.count(every), anchor);
        String key = KEY + k + ":" + anchor
                + (all.stream().anyMatch(each -> each.key().startsWith(KEY + k + ":")) ? ":" + every : "")
                + facts.where(rule);
        all.add(new Shift(rule, facts.site()).of(new Days(key, opens(k), due(k), false, why), past.lastDay()));
    }

    /** 0 before the first opened. */
    private long newestOpened() {
        double days = every.toTotalMonths() * 30.436875 + every.getDays();
        long k = Math.max(0, (long) (ChronoUnit.DAYS.between(anchor, facts.today()) / days) - 2);
        while (!opens(k + 1).isAfter(facts.today())) {
            k++;
        }
        return k;
    }

    private LocalDate due(long k) {
        return anchor.plus(every.multipliedBy(Math.toIntExact(k)));
    }

    /** Never before the day after the one before was due. */
    private LocalDate opens(long k) {
        LocalDate opens = due(k).minusDays(rule.opensDaysBefore());
        LocalDate earliest = due(k - 1).plusDays(1);
        return opens.isBefore(earliest) ? earliest : opens;
    }
}
