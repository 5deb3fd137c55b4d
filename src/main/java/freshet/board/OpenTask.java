package freshet.board;

import freshet.rules.CareRule;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** An open task as it stands on the board; {@code ruleId} null is for one that no rule opened. */
record OpenTask(
        long id,
        @Nullable Long ruleId,
        String occurrence,
        long siteId,
        @Nullable Long positionId,
        @Nullable Long checklistId,
        String title,
        @Nullable Why why,
        LocalDate opensOn,
        LocalDate dueOn,
        boolean predicted,
        int graceDays,
        boolean started) {

    boolean agrees(Wanted wanted, PlanFacts.Standing unit) {
        return siteId == unit.siteId()
                && Objects.equals(positionId, unit.positionId())
                && opensOn.equals(wanted.days().opensOn())
                && dueOn.equals(wanted.days().dueOn())
                && predicted == wanted.days().predicted()
                && graceDays == wanted.rule().graceDays()
                && Objects.equals(checklistId, wanted.rule().checklistId())
                && wanted.days().why().equals(why)
                && title.equals(wanted.title());
    }

    /** Why it is wanted no more, as a code. */
    String goneBecause(PlanFacts.Standing unit, Engine engine, Engine.Plan plan, Map<Long, CareRule> rules) {
        CareRule rule = rules.get(ruleId);
        if (siteId != unit.siteId()) {
            return "MOVED";
        }
        if (rule == null) {
            return "NO_LONGER_DUE";
        }
        if (engine.doneAlready(rule, opensOn, dueOn)) {
            return "DONE_ALREADY";
        }
        String rests = plan.resting().get(rule.id());
        if (rests != null) {
            return rests;
        }
        List<Wanted> others = plan.wanted().stream()
                .filter(wanted -> wanted.rule().id() == rule.id())
                .toList();
        if (Wanted.standsForItself(occurrence)) {
            return others.stream().anyMatch(this::goesBefore) ? "NEXT_OPENED" : "NO_LONGER_DUE";
        }
        return others.isEmpty() ? "NO_LONGER_DUE" : "OVERTAKEN";
    }

    /** Whether the other is a later turn of the same window, or a later day of the same anchor. */
    private boolean goesBefore(Wanted other) {
        String[] mine = occurrence.split(":", 3);
        String[] its = other.occurrence().split(":", 3);
        boolean fixed = mine.length == 3;
        return its.length == mine.length
                && its[0].equals(mine[0])
                && (!fixed || its[2].equals(mine[2]))
                && Long.parseLong(its[1]) > Long.parseLong(mine[1]);
    }
}
