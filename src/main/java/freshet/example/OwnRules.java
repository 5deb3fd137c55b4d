package freshet.example;

import freshet.people.Person;
import freshet.places.Places;
import freshet.pumps.Pumps;
import freshet.rules.Applies;
import freshet.rules.CareRule;
import freshet.rules.CareRules;
import freshet.rules.RuleDraft;
import freshet.rules.Scope;
import freshet.rules.Trigger;
import java.math.BigDecimal;
import java.time.Period;
import java.util.List;
import java.util.Set;

/** Two rules that the keepers of the example yard set nearer than the product's: for the pit that spills soonest, and for a worked engine. */
final class OwnRules {

    private final CareRules rules;
    private final Places places;
    private final Pumps pumps;

    OwnRules(CareRules rules, Places places, Pumps pumps) {
        this.rules = rules;
        this.places = places;
        this.pumps = pumps;
    }

    void setThem(Person owner) {
        long court = places.siteNamed("Dyer Court").orElseThrow().id();
        long pit = places.positions(court).stream()
                .filter(position -> position.name().equals("Dyer Court pit"))
                .findFirst()
                .orElseThrow()
                .id();
        rules.add(
                draft(
                        "monthly",
                        "Float and alarm test, each fortnight",
                        new Scope.InPosition(pit),
                        "monthly-sump-with-float",
                        true,
                        "This pit spills 1.3 min after its alarm; common practice, no source",
                        new Trigger.Calendar(Period.ofWeeks(2))),
                owner);
        rules.add(
                draft(
                        "engine-oil",
                        "Engine oil, worked in dust",
                        new Scope.OfUnit(pumps.unitTagged("BF-18").orElseThrow().id()),
                        "engine-oil-engine-trash",
                        false,
                        "common practice, no source: 50 to 100 h",
                        new Trigger.RunHours(BigDecimal.valueOf(50), null),
                        new Trigger.Calendar(Period.ofMonths(6))),
                owner);
    }

    private RuleDraft draft(
            String job,
            String name,
            Scope scope,
            String like,
            boolean followsPosition,
            String source,
            Trigger... triggers) {
        long checklist = rules.rules().stream()
                .filter(each -> each.code().equals(like))
                .map(CareRule::checklistId)
                .findFirst()
                .orElseThrow();
        return new RuleDraft(
                job,
                name,
                scope,
                List.of(triggers),
                checklist,
                false,
                followsPosition,
                7,
                3,
                null,
                null,
                false,
                Applies.ALWAYS,
                Set.of(),
                source);
    }
}
