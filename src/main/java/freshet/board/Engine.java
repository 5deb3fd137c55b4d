package freshet.board;

import freshet.board.Wanted.Days;
import freshet.places.Span;
import freshet.rules.Applied;
import freshet.rules.Applies;
import freshet.rules.CareRule;
import freshet.rules.Trigger;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Works out of the facts of one unit and of the rules that hold for it what tasks it should have. Knows no database and no clock. */
final class Engine {

    private final UnitFacts facts;

    Engine(UnitFacts facts) {
        this.facts = facts;
    }

    /**
     * What is wanted, and the rules that hold but rest.
     *
     * @param resting by the rule's id, why: {@code STORED} or {@code IN_USE}
     */
    record Plan(List<Wanted> wanted, Map<Long, String> resting) {}

    Plan plan(List<Applied> applied) {
        List<Wanted> wanted = new ArrayList<>();
        Map<Long, String> resting = new HashMap<>();
        for (Applied each : applied) {
            CareRule rule = each.rule();
            String rests = rests(rule);
            if (rests != null) {
                resting.put(rule.id(), rests);
            }
            if (!("STORED".equals(rests) && rule.applies() == Applies.IN_USE || "IN_USE".equals(rests))) {
                add(rule, wanted);
            }
        }
        return new Plan(wanted, resting);
    }

    private @Nullable String rests(CareRule rule) {
        boolean laidUp = facts.storage().lasts();
        if (rule.applies() == Applies.LAID_UP) {
            return laidUp ? null : "IN_USE";
        }
        boolean byUse = rule.triggers().stream()
                .anyMatch(trigger -> trigger instanceof Trigger.RunHours
                        || trigger instanceof Trigger.Starts
                        || trigger instanceof Trigger.Idle);
        return laidUp && (byUse || rule.applies() == Applies.IN_USE) ? "STORED" : null;
    }

    /** Turns of the season and fixed days stand each for itself; of all else the earliest is wanted, unless one of those is due no later. */
    private void add(CareRule rule, List<Wanted> wanted) {
        Past past = Past.of(facts, rule);
        List<Wanted> its = new ArrayList<>();
        addTurns(rule, past, its);
        FixedDays.of(facts, rule, past).forEach(days -> its.add(new Wanted(rule, days.key(), "", days)));
        Days earliest = earliest(rule, past);
        if (earliest != null
                && its.stream().allMatch(other -> other.days().dueOn().isAfter(earliest.dueOn()))) {
            its.add(new Wanted(rule, earliest.key(), "", earliest));
        }
        its.stream().filter(each -> !signed(each)).forEach(wanted::add);
    }

    private void addTurns(CareRule rule, Past past, List<Wanted> its) {
        for (Trigger trigger : rule.triggers()) {
            if (trigger instanceof Trigger.Season season) {
                for (Span turn : facts.site().turns(season.window())) {
                    if (!turn.dueOn().isBefore(facts.inCareFrom()) && !done(turn, past)) {
                        String key = SiteDays.occurrence(turn);
                        Why why = Why.of("season", turn.window().name(), turn.opensOn(), turn.dueOn());
                        Days days = new Days(key, turn.opensOn(), turn.dueOn(), false, why);
                        its.add(new Wanted(rule, key, turn.label(), days));
                    }
                }
            }
        }
    }

    /** The work follows the unit to another site, and outlives a window that was replaced. */
    private static boolean done(Span turn, Past past) {
        return !past.works().isEmpty()
                && (past.ownOverlaps(turn.opensOn(), turn.dueOn())
                        || past.coveredWithin(
                                turn.opensOn(),
                                turn.window().startingIn(turn.year() + 1).opensOn()));
    }

    private @Nullable Days earliest(CareRule rule, Past past) {
        Intervals intervals = new Intervals(facts, rule, past);
        Occasions occasions = new Occasions(facts, rule, past);
        Days byInterval = intervals.next();
        Days byOccasion = rule.triggers().stream()
                .map(occasions::of)
                .filter(days -> days != null)
                .min(Comparator.comparing(Days::dueOn))
                .orElse(null);
        boolean interval =
                byInterval != null && (byOccasion == null || !byOccasion.dueOn().isBefore(byInterval.dueOn()));
        Days earliest = interval ? byInterval : byOccasion;
        if (earliest == null) {
            return null;
        }
        LocalDate lastDone = interval ? intervals.countsFrom() : past.lastDay();
        Days moved = new Shift(rule, facts.site()).of(earliest, lastDone);
        return moved.dueOn().isBefore(facts.inCareFrom()) ? null : moved;
    }

    private boolean signed(Wanted wanted) {
        return facts.works().stream()
                .anyMatch(work ->
                        work.ruleId() == wanted.rule().id() && work.occurrence().equals(wanted.occurrence()));
    }

    /** Whether work was signed that does what an open task asks for. */
    boolean doneAlready(CareRule rule, LocalDate opensOn, LocalDate dueOn) {
        Past past = Past.of(facts, rule);
        return past.ownOverlaps(opensOn, dueOn) || past.doneWithin(opensOn, LocalDate.MAX);
    }
}
