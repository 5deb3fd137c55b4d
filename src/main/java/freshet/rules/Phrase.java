package freshet.rules;

import freshet.measures.Show;
import java.math.BigDecimal;
import java.time.Period;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.context.support.DefaultMessageSourceResolvable;

/** Something to be said of a rule: a message and what it is filled with, figures as the reader writes them. */
record Phrase(String code, List<Object> arguments) {

    static Phrase of(String code, Object... arguments) {
        return new Phrase("rules." + code, List.of(arguments));
    }

    /** When work is due by this trigger: "each 6 months". */
    static Phrase when(Trigger trigger, Show show) {
        if (trigger instanceof Trigger.Calendar calendar) {
            Period every = calendar.every();
            Span unit = Span.of(every);
            return of("when.calendar." + unit, unit.count(every));
        }
        if (trigger instanceof Trigger.Season season) {
            return of("when.season." + season.window());
        }
        if (trigger instanceof Trigger.RunHours hours) {
            return amounts("when.hours", hours.every(), hours.first(), show);
        }
        if (trigger instanceof Trigger.Starts starts) {
            return amounts("when.starts", starts.every(), starts.first(), show);
        }
        if (trigger instanceof Trigger.Event event) {
            var happened = new DefaultMessageSourceResolvable("rules.after." + event.kind());
            return of(event.firstOnly() ? "when.event.first" : "when.event", event.daysToAct(), happened);
        }
        if (trigger instanceof Trigger.Relocated moved) {
            return of("when.relocated", moved.daysToAct());
        }
        if (trigger instanceof Trigger.Idle idle) {
            return of("when.idle", show.count(idle.days()), idle.daysToAct());
        }
        Trigger.Condition condition = (Trigger.Condition) trigger;
        return of("when.condition." + condition.measure(), limit(condition, show), condition.daysToAct());
    }

    private static Phrase amounts(String code, BigDecimal every, @Nullable BigDecimal first, Show show) {
        return first == null
                ? of(code, amount(every, show))
                : of(code + ".first", amount(every, show), amount(first, show));
    }

    private static String amount(BigDecimal amount, Show show) {
        return show.number(
                amount.doubleValue(), Math.max(amount.stripTrailingZeros().scale(), 0));
    }

    private static String limit(Trigger.Condition condition, Show show) {
        double limit = condition.threshold();
        return Limit.of(condition.measure()).percent()
                ? show.percent(limit)
                : show.number(limit, limit == Math.rint(limit) ? 0 : 1);
    }
}
