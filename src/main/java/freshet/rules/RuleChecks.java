package freshet.rules;

import static freshet.people.Refused.Wrong.at;

import freshet.checklists.Checklist;
import freshet.checklists.Checklists;
import freshet.people.Refused;
import freshet.people.Refused.Wrong;
import freshet.places.Places;
import freshet.places.WindowKind;
import freshet.pumps.PumpKind;
import freshet.pumps.Pumps;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.Period;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.context.support.DefaultMessageSourceResolvable;
import org.springframework.stereotype.Component;

/** What is wrong with a rule to be. */
@Component
class RuleChecks {

    static final int LONGEST_NAME = 80;
    static final int LONGEST_JOB = 40;
    static final int LONGEST_SOURCE = 400;
    static final int MOST_TRIGGERS = 8;
    static final int MOST_DAYS = 366;
    private static final int MOST_MONTHS = 120;
    private static final int DAYS_OF_TEN_YEARS = 3653;
    private static final int MOST_IDLE_DAYS = 3653;
    private static final LocalDate FEBRUARY = LocalDate.of(2025, 2, 1);
    private static final BigDecimal MOST_HOURS = BigDecimal.valueOf(100_000);
    private static final BigDecimal MOST_STARTS = BigDecimal.valueOf(10_000_000);

    private final Checklists checklists;
    private final Places places;
    private final Pumps pumps;

    RuleChecks(Checklists checklists, Places places, Pumps pumps) {
        this.checklists = checklists;
        this.places = places;
        this.pumps = pumps;
    }

    /** The draft with its scope narrowed to its checklist's kind, where it names a place; refused when something is wrong with it. */
    RuleDraft passed(RuleDraft draft) {
        List<Wrong> wrongs = new ArrayList<>();
        name(draft, wrongs);
        for (int i = 0; i < draft.triggers().size(); i++) {
            trigger(draft.triggers().get(i), "triggers[" + i + "].", wrongs);
        }
        if (draft.triggers().isEmpty() || draft.triggers().size() > MOST_TRIGGERS) {
            wrongs.add(at(
                    "triggers",
                    draft.triggers().isEmpty() ? "rules.trigger.none" : "rules.trigger.many",
                    MOST_TRIGGERS));
        }
        days(draft, wrongs);
        if ((draft.accessFrom() == null) != (draft.accessTo() == null)) {
            wrongs.add(at(draft.accessFrom() == null ? "accessFromMonth" : "accessToMonth", "rules.access.half"));
        }
        if (draft.covers().contains(draft.job())) {
            wrongs.add(at("covers", "rules.covers.itself"));
        }
        Scope scope = scope(draft, wrongs);
        Refused.ifAny(wrongs);
        return draft.with(scope);
    }

    private static void name(RuleDraft draft, List<Wrong> wrongs) {
        text("name", draft.name(), LONGEST_NAME, "rules.name.missing", wrongs);
        text("job", draft.job(), LONGEST_JOB, "rules.job.missing", wrongs);
        if (draft.source() != null && draft.source().length() > LONGEST_SOURCE) {
            wrongs.add(at("source", "rules.tooLong", LONGEST_SOURCE));
        }
    }

    private static void text(String field, String text, int longest, String missing, List<Wrong> wrongs) {
        if (text.isBlank()) {
            wrongs.add(at(field, missing));
        } else if (text.length() > longest) {
            wrongs.add(at(field, "rules.tooLong", longest));
        }
    }

    private static void trigger(Trigger trigger, String path, List<Wrong> wrongs) {
        if (trigger instanceof Trigger.Calendar calendar) {
            calendar(calendar.every(), path, wrongs);
        } else if (trigger instanceof Trigger.Season season) {
            if (season.window() == WindowKind.RUNNING) {
                wrongs.add(at(path + "window", "rules.trigger.window"));
            }
        } else if (trigger instanceof Trigger.RunHours hours) {
            amounts(hours.every(), hours.first(), MOST_HOURS, path, wrongs);
        } else if (trigger instanceof Trigger.Starts starts) {
            amounts(starts.every(), starts.first(), MOST_STARTS, path, wrongs);
        } else if (trigger instanceof Trigger.Event event) {
            act(event.daysToAct(), path, wrongs);
        } else if (trigger instanceof Trigger.Relocated moved) {
            act(moved.daysToAct(), path, wrongs);
        } else if (trigger instanceof Trigger.Idle idle) {
            within(idle.days(), 1, MOST_IDLE_DAYS, path + "count", wrongs);
            act(idle.daysToAct(), path, wrongs);
        } else {
            condition((Trigger.Condition) trigger, path, wrongs);
        }
    }

    private static void calendar(Period every, String path, List<Wrong> wrongs) {
        int parts = (every.getDays() == 0 ? 0 : 1) + (every.toTotalMonths() == 0 ? 0 : 1);
        if (parts == 0 || every.isNegative()) {
            wrongs.add(at(path + "count", "rules.trigger.zero"));
        } else if (parts > 1) {
            wrongs.add(at(path + "count", "rules.trigger.mixed"));
        } else if (every.toTotalMonths() > MOST_MONTHS || every.getDays() > DAYS_OF_TEN_YEARS) {
            wrongs.add(at(path + "count", "rules.trigger.tenYears"));
        }
    }

    private static void amounts(
            BigDecimal every, @Nullable BigDecimal first, BigDecimal most, String path, List<Wrong> wrongs) {
        amount(path + "every", every, most, wrongs);
        if (first != null) {
            amount(path + "first", first, most, wrongs);
        }
    }

    private static void amount(String field, BigDecimal amount, BigDecimal most, List<Wrong> wrongs) {
        if (amount.signum() <= 0) {
            wrongs.add(at(field, "rules.trigger.zero"));
        } else if (amount.compareTo(most) > 0) {
            wrongs.add(at(field, "rules.trigger.most", most));
        } else if (amount.stripTrailingZeros().scale() > 2) {
            wrongs.add(at(field, "rules.trigger.digits"));
        }
    }

    private static void act(int days, String path, List<Wrong> wrongs) {
        within(days, 0, MOST_DAYS, path + "days", wrongs);
    }

    private static void within(int number, int least, int most, String field, List<Wrong> wrongs) {
        if (number < least || number > most) {
            wrongs.add(at(field, "rules.days", least, most));
        }
    }

    private static void condition(Trigger.Condition condition, String path, List<Wrong> wrongs) {
        act(condition.daysToAct(), path, wrongs);
        Limit limit = Limit.of(condition.measure());
        if (!(condition.threshold() >= limit.least() && condition.threshold() <= limit.most())) {
            wrongs.add(
                    at(path + "limit", "rules.trigger.limit", limit.shown(limit.least()), limit.shown(limit.most())));
        }
    }

    /** Work cannot open longer before it is due than its interval is: it would open before it was done. */
    private static void days(RuleDraft draft, List<Wrong> wrongs) {
        within(draft.graceDays(), 0, MOST_DAYS, "graceDays", wrongs);
        int opens = draft.opensDaysBefore();
        if (opens < 0 || opens > MOST_DAYS) {
            wrongs.add(at("opensDaysBefore", "rules.days", 0, MOST_DAYS));
            return;
        }
        draft.triggers().stream()
                .filter(Trigger.Calendar.class::isInstance)
                .map(trigger -> shortestDays(((Trigger.Calendar) trigger).every()))
                .filter(days -> days > 0 && opens >= days)
                .findFirst()
                .ifPresent(days -> wrongs.add(at("opensDaysBefore", "rules.opens.tooEarly", days)));
    }

    /** The least days that the period is ever long: counted from a February without a leap day. */
    private static int shortestDays(Period every) {
        return (int) ChronoUnit.DAYS.between(FEBRUARY, FEBRUARY.plus(every));
    }

    private Scope scope(RuleDraft draft, List<Wrong> wrongs) {
        PumpKind kind = kindOf(draft, wrongs);
        Scope scope = draft.scope();
        if (scope instanceof Scope.AtSite site) {
            places.site(site.siteId());
            return new Scope.AtSite(site.siteId(), kind);
        }
        if (scope instanceof Scope.InPosition position) {
            places.position(position.positionId());
            return new Scope.InPosition(position.positionId(), kind);
        }
        PumpKind meant = meant(scope);
        if (kind != null && kind != meant) {
            var its = new DefaultMessageSourceResolvable("pumps.pumpKind." + kind);
            wrongs.add(at("checklistId", "rules.checklist.otherKind", its));
        }
        return scope;
    }

    /** The kind that its checklist is for; null for any. */
    private @Nullable PumpKind kindOf(RuleDraft draft, List<Wrong> wrongs) {
        for (Checklist checklist : checklists.checklists()) {
            if (checklist.id() == draft.checklistId()) {
                return checklist.pumpKind();
            }
        }
        wrongs.add(at("checklistId", "rules.checklist.missing"));
        return null;
    }

    private @Nullable PumpKind meant(Scope scope) {
        if (scope instanceof Scope.OfKind kind) {
            return kind.kind();
        }
        if (scope instanceof Scope.OfModel model) {
            return pumps.model(model.modelId()).kind();
        }
        return scope instanceof Scope.OfUnit unit
                ? pumps.unit(unit.unitId()).model().kind()
                : null;
    }
}
