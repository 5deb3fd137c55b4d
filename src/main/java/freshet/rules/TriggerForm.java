package freshet.rules;

import freshet.happenings.HappeningKind;
import freshet.people.Typed;
import freshet.places.WindowKind;
import java.math.BigDecimal;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** What was typed about one trigger; of which kind it is says what of it is read. */
record TriggerForm(
        @Nullable TriggerKind kind,
        @Nullable String count,
        @Nullable Span unit,
        @Nullable WindowKind window,
        @Nullable String every,
        @Nullable String first,
        @Nullable HappeningKind event,
        @Nullable Boolean firstOnly,
        @Nullable Measure measure,
        @Nullable String limit,
        @Nullable String days) {

    private static final int MOST_DIGITS = 6;

    TriggerForm {
        kind = kind == null ? TriggerKind.CALENDAR : kind;
    }

    static TriggerForm blank(TriggerKind kind) {
        String days = kind == TriggerKind.IDLE || kind == TriggerKind.CONDITION ? "14" : "2";
        return new TriggerForm(kind, null, Span.MONTH, null, null, null, null, null, null, null, days);
    }

    static TriggerForm of(Trigger trigger) {
        if (trigger instanceof Trigger.Calendar calendar) {
            Span unit = Span.of(calendar.every());
            String count = String.valueOf(unit.count(calendar.every()));
            return new TriggerForm(TriggerKind.CALENDAR, count, unit, null, null, null, null, null, null, null, null);
        }
        if (trigger instanceof Trigger.Season season) {
            return new TriggerForm(
                    TriggerKind.SEASON, null, null, season.window(), null, null, null, null, null, null, null);
        }
        if (trigger instanceof Trigger.RunHours hours) {
            return amounts(TriggerKind.RUN_HOURS, hours.every(), hours.first());
        }
        if (trigger instanceof Trigger.Starts starts) {
            return amounts(TriggerKind.STARTS, starts.every(), starts.first());
        }
        if (trigger instanceof Trigger.Event event) {
            return new TriggerForm(
                    TriggerKind.EVENT,
                    null,
                    null,
                    null,
                    null,
                    null,
                    event.kind(),
                    event.firstOnly() ? true : null,
                    null,
                    null,
                    String.valueOf(event.daysToAct()));
        }
        if (trigger instanceof Trigger.Relocated moved) {
            String days = String.valueOf(moved.daysToAct());
            return new TriggerForm(TriggerKind.RELOCATED, null, null, null, null, null, null, null, null, null, days);
        }
        if (trigger instanceof Trigger.Idle idle) {
            return new TriggerForm(
                    TriggerKind.IDLE,
                    String.valueOf(idle.days()),
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    String.valueOf(idle.daysToAct()));
        }
        return condition((Trigger.Condition) trigger);
    }

    private static TriggerForm amounts(TriggerKind kind, BigDecimal every, @Nullable BigDecimal first) {
        String firstText = first == null ? null : first.toPlainString();
        return new TriggerForm(kind, null, null, null, every.toPlainString(), firstText, null, null, null, null, null);
    }

    private static TriggerForm condition(Trigger.Condition condition) {
        double shown = Limit.of(condition.measure()).shown(condition.threshold());
        return new TriggerForm(
                TriggerKind.CONDITION,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                condition.measure(),
                plain(shown),
                String.valueOf(condition.daysToAct()));
    }

    /** 80 for 0.8 in percent, whatever the last binary digit makes of it. */
    private static String plain(double shown) {
        return BigDecimal.valueOf(Math.round(shown * 1e6), 6)
                .stripTrailingZeros()
                .toPlainString();
    }

    /** The trigger that was typed; null when something is wrong, which is then among the wrongs. */
    @Nullable
    Trigger trigger(String path, Typed typed) {
        return switch (Objects.requireNonNull(kind)) {
            case CALENDAR -> {
                Integer number = whole(path + "count", count, typed);
                Span its = typed.required(path + "unit", unit, "rules.trigger.unit");
                yield number == null || its == null ? null : new Trigger.Calendar(its.times(number));
            }
            case SEASON -> {
                WindowKind its = typed.required(path + "window", window, "rules.trigger.window");
                yield its == null ? null : new Trigger.Season(its);
            }
            case RUN_HOURS -> {
                BigDecimal each = amount(path, typed);
                BigDecimal one = typed.exact(path + "first", first);
                yield each == null ? null : new Trigger.RunHours(each, one);
            }
            case STARTS -> {
                BigDecimal each = amount(path, typed);
                BigDecimal one = typed.exact(path + "first", first);
                yield each == null ? null : new Trigger.Starts(each, one);
            }
            case EVENT -> {
                HappeningKind its = typed.required(path + "event", event, "rules.trigger.event");
                Integer act = whole(path + "days", days, typed);
                yield its == null || act == null ? null : new Trigger.Event(its, Boolean.TRUE.equals(firstOnly), act);
            }
            case RELOCATED -> {
                Integer act = whole(path + "days", days, typed);
                yield act == null ? null : new Trigger.Relocated(act);
            }
            case IDLE -> {
                Integer number = whole(path + "count", count, typed);
                Integer act = whole(path + "days", days, typed);
                yield number == null || act == null ? null : new Trigger.Idle(number, act);
            }
            case CONDITION -> {
                Measure its = typed.required(path + "measure", measure, "rules.trigger.measure");
                Double beyond =
                        typed.required(path + "limit", typed.number(path + "limit", limit), "rules.trigger.missing");
                Integer act = whole(path + "days", days, typed);
                yield its == null || beyond == null || act == null
                        ? null
                        : new Trigger.Condition(its, Limit.of(its).inside(beyond), act);
            }
        };
    }

    private @Nullable BigDecimal amount(String path, Typed typed) {
        return typed.required(path + "every", typed.exact(path + "every", every), "rules.trigger.missing");
    }

    /** A whole number of at most six digits; null when none was typed, which is then among the wrongs. */
    static @Nullable Integer whole(String field, @Nullable String text, Typed typed) {
        String number = Typed.textOrEmpty(text);
        if (number.matches("-?\\d{1," + MOST_DIGITS + "}")) {
            return Integer.valueOf(number);
        }
        typed.wrong(field, number.isEmpty() ? "rules.trigger.missing" : "rules.whole");
        return null;
    }
}
