package freshet.board;

import freshet.board.Wanted.Days;
import freshet.rules.CareRule;
import freshet.rules.Measure;
import freshet.rules.Trigger;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** What single occasions make due: something that happened, a move, a stretch without use, a figure beyond its limit. */
final class Occasions {

    private final UnitFacts facts;
    private final CareRule rule;
    private final Past past;

    Occasions(UnitFacts facts, CareRule rule, Past past) {
        this.facts = facts;
        this.rule = rule;
        this.past = past;
    }

    /** What this trigger makes due, not yet moved; null when nothing, or when it is no occasion. */
    @Nullable
    Days of(Trigger trigger) {
        if (trigger instanceof Trigger.Event event) {
            List<Occasion> those = facts.happenings().stream()
                    .filter(each -> each.kind() == event.kind() && counts(each))
                    .filter(each -> !event.firstOnly()
                            || facts.provedAt() == null
                            || each.at().isAfter(facts.provedAt()))
                    .toList();
            return first(
                    event.firstOnly() && !those.isEmpty() ? those.subList(0, 1) : those,
                    "event:",
                    "event." + event.kind(),
                    event.daysToAct());
        }
        if (trigger instanceof Trigger.Relocated relocated) {
            return first(
                    facts.moves().stream().filter(this::counts).toList(), "moved:", "moved", relocated.daysToAct());
        }
        if (trigger instanceof Trigger.Idle idle) {
            return idle(idle);
        }
        return trigger instanceof Trigger.Condition condition ? condition(condition) : null;
    }

    private boolean counts(Occasion occasion) {
        return !occasion.day().isBefore(facts.today().minusDays(SiteDays.DAYS_AHEAD))
                && !occasion.day().isBefore(facts.inCareFrom());
    }

    /** Of those after which the job was not done, the first; so that a second one asks for nothing more. */
    private @Nullable Days first(List<Occasion> those, String key, String why, int daysToAct) {
        return those.stream()
                .filter(each -> !past.doneSince(each.at()))
                .findFirst()
                .map(each -> new Days(
                        key + each.id(), each.day(), each.day().plusDays(daysToAct), false, Why.of(why, each.day())))
                .orElse(null);
    }

    private @Nullable Days idle(Trigger.Idle idle) {
        if (facts.storage().lasts() || facts.onHire()) {
            return null;
        }
        LocalDate used = facts.usedOn() == null || facts.usedOn().isBefore(facts.inCareFrom())
                ? facts.inCareFrom()
                : facts.usedOn();
        LocalDate done = past.lastDay();
        LocalDate since = done != null && done.isAfter(used) ? done : used;
        LocalDate from = since.plusDays(idle.days());
        return from.isBefore(facts.today())
                ? new Days(
                        "idle:" + since + facts.where(rule),
                        from,
                        from.plusDays(idle.daysToAct()),
                        false,
                        Why.of("idle", since, idle.days()))
                : null;
    }

    /** An episode begins with the first figure beyond the limit since one that was not. */
    private @Nullable Days condition(Trigger.Condition condition) {
        List<Figure> figures = facts.figures().getOrDefault(condition.measure(), List.of());
        Figure first = null;
        LocalDate day = facts.today();
        for (int i = figures.size() - 1; i >= 0; i--) {
            Figure figure = figures.get(i);
            LocalDate since = beyondSince(figure, condition, i == figures.size() - 1);
            if (since == null) {
                break;
            }
            first = figure;
            day = since;
        }
        if (first == null || past.doneSince(first.at())) {
            return null;
        }
        boolean percent = condition.measure() == Measure.CAPACITY || condition.measure() == Measure.HOURS_APART;
        String limit = Why.plain(percent ? condition.threshold() * 100 : condition.threshold());
        String measure = condition.measure().name();
        return new Days(
                key(condition.measure()) + first.name(),
                day,
                day.plusDays(condition.daysToAct()),
                false,
                Why.of("condition." + measure, limit, first.day()));
    }

    private static String key(Measure measure) {
        return measure == Measure.CAPACITY ? "test:" : measure.name().toLowerCase(Locale.ROOT) + ":";
    }

    /** The day from which a figure is beyond the limit; null when it is not. A day foretold by the last test comes nearer by itself. */
    private @Nullable LocalDate beyondSince(Figure figure, Trigger.Condition condition, boolean last) {
        double limit = condition.threshold();
        return switch (condition.measure()) {
            case CAPACITY -> figure.value() < limit ? figure.day() : null;
            case DAYS_TO_CAPACITY_LOW -> {
                long until = figure.value() < limit ? 0 : (long) Math.floor(Math.min(figure.value() - limit, 1e6)) + 1;
                LocalDate day = figure.day().plusDays(until);
                yield until == 0 || last && !day.isAfter(facts.today()) ? day : null;
            }
            case STARTS_PER_HOUR, MINUTES_PER_START, HOURS_APART -> figure.value() > limit ? figure.day() : null;
        };
    }
}
