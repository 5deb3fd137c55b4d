package freshet.board;

import freshet.board.Series.Point;
import freshet.board.Wanted.Days;
import freshet.rules.Applies;
import freshet.rules.CareRule;
import freshet.rules.Trigger;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import org.jspecify.annotations.Nullable;

/**
 * What an interval makes due, of the calendar, of run hours or of starts, counted on from when the job was done last. All of a rule share
 * one key, so that a task stays when another interval overtakes the one that opened it.
 */
final class Intervals {

    private final UnitFacts facts;
    private final CareRule rule;
    private final Past past;
    private final Base base;

    Intervals(UnitFacts facts, CareRule rule, Past past) {
        this.facts = facts;
        this.rule = rule;
        this.past = past;
        this.base = base();
    }

    /** From where is counted: a signed task, or the anchor. */
    private record Base(@Nullable Work work, Instant at, LocalDate day) {}

    /** The moment up to which things are known. */
    private record AsOf(Instant at, LocalDate day) {}

    /** What is due next, not yet moved; null when no interval says anything. */
    @Nullable
    Days next() {
        boolean any = rule.triggers().stream().anyMatch(this::isInterval);
        return any ? earliest(base, new AsOf(Instant.MAX, facts.today())) : null;
    }

    /** The day of the work from which is counted on; null while nothing counts. */
    @Nullable
    LocalDate countsFrom() {
        return base.work() == null ? null : base.work().day();
    }

    private boolean isInterval(Trigger trigger) {
        return trigger instanceof Trigger.Calendar && !rule.fixed()
                || trigger instanceof Trigger.RunHours
                || trigger instanceof Trigger.Starts;
    }

    /** The job itself counts whenever it was signed; work that contains it only from the opening day of what was due then. */
    private Base base() {
        LocalDate anchor = facts.anchor(rule);
        Base base = new Base(null, facts.site().begin(anchor), anchor);
        if (rule.triggers().stream().noneMatch(this::isInterval)) {
            return base;
        }
        for (Work work : past.works()) {
            if (work.itself(rule) || inWindow(base, work)) {
                base = new Base(work, work.at(), work.day());
            }
        }
        return base;
    }

    private boolean inWindow(Base base, Work work) {
        // as it stood before this work, which may itself have laid the unit up
        Days due = earliest(base, new AsOf(work.at().minus(1, ChronoUnit.MICROS), work.day()));
        if (due == null) {
            return false;
        }
        LocalDate lastDone = base.work() == null ? null : base.work().day();
        return !new Shift(rule, facts.site()).of(due, lastDone).opensOn().isAfter(work.day());
    }

    private @Nullable Days earliest(Base base, AsOf asOf) {
        Days earliest = null;
        for (Trigger trigger : rule.triggers()) {
            Days days = of(trigger, base, asOf);
            if (days != null && (earliest == null || days.dueOn().isBefore(earliest.dueOn()))) {
                earliest = days;
            }
        }
        return earliest;
    }

    private @Nullable Days of(Trigger trigger, Base base, AsOf asOf) {
        if (trigger instanceof Trigger.Calendar calendar && !rule.fixed()) {
            return calendar(calendar, base, asOf);
        }
        if (trigger instanceof Trigger.RunHours hours) {
            return counted("hours", facts.hours(), hours.every(), hours.first(), base, asOf);
        }
        if (trigger instanceof Trigger.Starts starts) {
            return counted("starts", facts.starts(), starts.every(), starts.first(), base, asOf);
        }
        return null;
    }

    private Days calendar(Trigger.Calendar calendar, Base base, AsOf asOf) {
        LocalDate from = base.day();
        LocalDate laidUp = facts.storage().since(asOf.at());
        String since = base.work() == null ? "start" : "done";
        if (rule.applies() == Applies.LAID_UP && laidUp != null && laidUp.isAfter(from)) {
            from = laidUp;
            since = "laidUp";
        }
        LocalDate due = from.plus(calendar.every());
        if (rule.applies() == Applies.IN_USE) {
            due = facts.storage().inUse(due);
        }
        Why why = Why.of("calendar." + Every.of(calendar.every()) + "." + since, Every.count(calendar.every()), from);
        return Days.before(key(base), due, rule.opensDaysBefore(), from.plusDays(1), false, why);
    }

    private @Nullable Days counted(
            String what, Series all, BigDecimal every, @Nullable BigDecimal first, Base base, AsOf asOf) {
        Series series = all.upTo(asOf.at());
        if (series.empty() || facts.storage().since(asOf.at()) != null) {
            return null;
        }
        BigDecimal limit = base.work() == null && first != null ? first : every;
        double from = series.at(base.at());
        Point reached = series.reaching(from + limit.doubleValue());
        if (reached != null) {
            Why why = Why.of(what + ".reached", limit.toPlainString(), reached.day());
            return Days.before(
                    key(base), reached.day(), rule.opensDaysBefore(), base.day().plusDays(1), false, why);
        }
        Double rate = series.rate(facts.storage());
        double left = from + limit.doubleValue() - series.last().total();
        if (rate == null || left / rate > 2 * SiteDays.DAYS_AHEAD + 36_525.0 || rate <= 0) {
            return null;
        }
        LocalDate due = series.last().day().plusDays((long) Math.ceil(left / rate - 1e-9));
        if (due.isAfter(asOf.day().plusDays(SiteDays.DAYS_AHEAD))) {
            return null;
        }
        Why why = Why.of(
                what + ".predicted",
                BigDecimal.valueOf(series.last().total() - from)
                        .setScale(what.equals("hours") ? 1 : 0, RoundingMode.HALF_UP),
                limit.toPlainString(),
                series.last().day());
        return Days.before(key(base), due, rule.opensDaysBefore(), base.day().plusDays(1), true, why);
    }

    private String key(Base base) {
        return "after:"
                + (base.work() == null
                        ? "start" + facts.where(rule)
                        : base.work().taskId());
    }
}
