package freshet.rules;

import freshet.checklists.Checklist;
import freshet.checklists.Checklists;
import freshet.people.NotFound;
import freshet.people.People;
import freshet.people.Person;
import freshet.people.Stale;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.springframework.boot.context.event.ApplicationStartedEvent;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.context.event.EventListener;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The door to the care rules. */
@Service
@Transactional
public class CareRules {

    private final RuleTable table;
    private final Checklists checklists;
    private final RuleChecks checks;
    private final People people;
    private final ApplicationEventPublisher events;

    CareRules(
            RuleTable table,
            Checklists checklists,
            RuleChecks checks,
            People people,
            ApplicationEventPublisher events) {
        this.table = table;
        this.checklists = checklists;
        this.checks = checks;
        this.people = people;
        this.events = events;
    }

    /**
     * Gives an install the rules of the product that it does not have yet; those that are there already stay as their owner left them.
     * Says nothing of it, for planning comes after it at each start.
     */
    @EventListener(ApplicationStartedEvent.class)
    // after the checklists, before anything is planned
    @Order(Ordered.HIGHEST_PRECEDENCE + 1)
    public void installDefaults() {
        Set<String> there = table.codes();
        List<DefaultRules.Given> missing = DefaultRules.all().stream()
                .filter(rule -> !there.contains(rule.code()))
                .toList();
        if (missing.isEmpty()) {
            return;
        }
        Map<String, Long> ids =
                checklists.checklists().stream().collect(Collectors.toMap(Checklist::code, Checklist::id));
        missing.stream()
                .filter(rule -> ids.containsKey(rule.checklist()))
                .forEach(rule -> table.add(rule.code(), rule.draft(ids.get(rule.checklist())), rule.active()));
    }

    /** All rules, resting ones too, the oldest first. */
    @Transactional(readOnly = true)
    public List<CareRule> rules() {
        return table.all();
    }

    /** The rules that are not at rest. */
    @Transactional(readOnly = true)
    public List<CareRule> active() {
        return table.all().stream().filter(CareRule::active).toList();
    }

    @Transactional(readOnly = true)
    public CareRule rule(long id) {
        return table.one(id).orElseThrow(() -> new NotFound("rule", id));
    }

    /**
     * Adds a rule and gives its id. One for a site or a position becomes a rule for pumps of its checklist's kind there.
     *
     * @throws freshet.people.Refused when it makes no sense, each wrong at the form's field
     */
    public long add(RuleDraft draft, Person by) {
        long id = table.addOwn(checks.passed(draft));
        changed(by, "rule added", id, draft.name());
        return id;
    }

    /**
     * Changes a rule, unless somebody did since the given version.
     *
     * @throws freshet.people.Refused when it makes no sense, each wrong at the form's field
     */
    public void change(long id, int version, RuleDraft draft, Person by) {
        CareRule stands = rule(id);
        RuleDraft passed = checks.passed(draft);
        stale(stands.version() != version, id);
        if (passed.equals(RuleDraft.of(stands))) {
            return;
        }
        stale(!table.change(id, version, passed), id);
        changed(by, "rule changed", id, draft.name());
    }

    /** Puts a rule to rest: it makes nothing due until it is woken. */
    public void rest(long id, int version, Person by) {
        activate(id, version, false, "rule put to rest", by);
    }

    /** Lets a resting rule make work due again. */
    public void wake(long id, int version, Person by) {
        activate(id, version, true, "rule woken", by);
    }

    private void activate(long id, int version, boolean active, String done, Person by) {
        CareRule stands = rule(id);
        stale(stands.version() != version, id);
        if (stands.active() == active) {
            return;
        }
        stale(!table.activate(id, version, active), id);
        changed(by, done, id, stands.name());
    }

    private void changed(Person by, String done, long id, String name) {
        people.note(by, done, "rule:" + id, name);
        events.publishEvent(new RulesChanged());
    }

    private static void stale(boolean meanwhile, long id) {
        if (meanwhile) {
            throw new Stale("rule", id);
        }
    }
}
