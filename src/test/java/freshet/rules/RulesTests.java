package freshet.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import freshet.FreshetTest;
import freshet.checklists.Checklists;
import freshet.happenings.HappeningKind;
import freshet.measures.UnitSystem;
import freshet.people.NotFound;
import freshet.people.People;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Stale;
import freshet.places.Places;
import freshet.places.SiteDraft;
import freshet.places.WindowKind;
import freshet.pumps.PumpKind;
import java.math.BigDecimal;
import java.time.MonthDay;
import java.time.Period;
import java.time.ZoneId;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.event.ApplicationEvents;
import org.springframework.test.context.event.RecordApplicationEvents;

@FreshetTest
@RecordApplicationEvents
class RulesTests {

    @Autowired
    CareRules rules;

    @Autowired
    Checklists checklists;

    @Autowired
    Places places;

    @Autowired
    People people;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    ApplicationEvents events;

    Person ilse;

    @BeforeEach
    void owner() {
        ilse = people.welcomeFirstOwner("ilse", "Ilse Marrow", "river at thaw", UnitSystem.SI);
    }

    private long checklist(String code) {
        return checklists.checklists().stream()
                .filter(each -> each.code().equals(code))
                .findFirst()
                .orElseThrow()
                .id();
    }

    private RuleDraft draft(Scope scope, String checklist, int opensDaysBefore, Trigger... triggers) {
        return new RuleDraft(
                "engine-oil",
                "Engine oil",
                scope,
                List.of(triggers),
                checklist(checklist),
                false,
                false,
                opensDaysBefore,
                3,
                null,
                null,
                false,
                Applies.ALWAYS,
                Set.of(),
                null);
    }

    private List<String> refusals(RuleDraft draft) {
        Refused refused = catchThrowableOfType(Refused.class, () -> rules.add(draft, ilse));
        assertThat(refused).as("refused").isNotNull();
        return refused.wrongs().stream()
                .map(wrong -> wrong.field() + " " + wrong.code())
                .toList();
    }

    @Test
    void keepsARuleWithEveryKindOfTriggerAsItWasDrafted() {
        RuleDraft draft = new RuleDraft(
                "engine-oil",
                "Engine oil",
                new Scope.OfKind(PumpKind.ENGINE_TRASH),
                List.of(
                        new Trigger.Calendar(Period.ofMonths(6)),
                        new Trigger.Calendar(Period.ofWeeks(3)),
                        new Trigger.Calendar(Period.ofDays(100)),
                        new Trigger.Season(WindowKind.CLOSING),
                        new Trigger.RunHours(BigDecimal.valueOf(100), BigDecimal.valueOf(20)),
                        new Trigger.Starts(new BigDecimal("2000.5"), null),
                        new Trigger.Event(HappeningKind.HIRE_RETURN, true, 2),
                        new Trigger.Relocated(7)),
                checklist("opening-engine-trash"),
                true,
                true,
                10,
                3,
                MonthDay.of(11, 1),
                MonthDay.of(2, 29),
                true,
                Applies.IN_USE,
                Set.of("monthly", "electrical"),
                "The maker''s manual");
        long id = rules.add(draft, ilse);

        CareRule rule = rules.rule(id);
        assertThat(RuleDraft.of(rule)).isEqualTo(draft);
        assertThat(rule.code()).isEqualTo("own-" + id);
        assertThat(rule.active()).isTrue();
        assertThat(rules.rules()).contains(rule);
        assertThat(events.stream(RulesChanged.class)).hasSize(1);
        assertThat(jdbc.sql("select action || ' ' || detail from audit_entry where subject = ?")
                        .param("rule:" + id)
                        .query(String.class)
                        .list())
                .containsExactly("rule added Engine oil");

        RuleDraft other = draft(
                new Scope.Every(),
                "electrical-test",
                0,
                new Trigger.Idle(90, 7),
                new Trigger.Condition(Measure.HOURS_APART, 0.1, 14));
        rules.change(id, 0, other, ilse);
        assertThat(RuleDraft.of(rules.rule(id))).isEqualTo(other);
        assertThatThrownBy(() -> rules.change(id, 0, draft, ilse)).isInstanceOf(Stale.class);
        assertThatThrownBy(() -> rules.rule(id + 1)).isInstanceOf(NotFound.class);
    }

    @Test
    void putsARuleToRestAndWakesIt() {
        CareRule capacity = rules.active().stream()
                .filter(rule -> rule.code().equals("capacity-below"))
                .findFirst()
                .orElseThrow();

        rules.rest(capacity.id(), capacity.version(), ilse);
        assertThat(rules.active()).extracting(CareRule::id).doesNotContain(capacity.id());
        assertThatThrownBy(() -> rules.wake(capacity.id(), capacity.version(), ilse))
                .isInstanceOf(Stale.class);
        rules.wake(capacity.id(), capacity.version() + 1, ilse);
        assertThat(rules.active()).extracting(CareRule::id).contains(capacity.id());
        assertThat(events.stream(RulesChanged.class)).hasSize(2);
    }

    @Test
    void bringsBackWhatIsMissingAndLeavesWhatTheOwnerChanged() {
        int all = rules.rules().size();
        CareRule opening = rules.rules().stream()
                .filter(rule -> rule.code().equals("opening-engine-trash"))
                .findFirst()
                .orElseThrow();
        RuleDraft as = RuleDraft.of(opening);
        RuleDraft changed = new RuleDraft(
                as.job(),
                "Spring opening of ours",
                as.scope(),
                as.triggers(),
                as.checklistId(),
                as.fixed(),
                as.followsPosition(),
                as.opensDaysBefore(),
                5,
                null,
                null,
                false,
                as.applies(),
                as.covers(),
                as.source());
        rules.change(opening.id(), opening.version(), changed, ilse);
        rules.rest(opening.id(), opening.version() + 1, ilse);
        jdbc.sql("delete from care_trigger where rule_id = (select id from care_rule where code = 'capacity-below')")
                .update();
        jdbc.sql("delete from care_rule where code = 'capacity-below'").update();

        rules.installDefaults();
        rules.installDefaults();

        assertThat(rules.rules()).hasSize(all);
        assertThat(RuleDraft.of(rules.rule(opening.id()))).isEqualTo(changed);
        assertThat(rules.rule(opening.id()).active()).isFalse();
        assertThat(rules.active()).extracting(CareRule::code).contains("capacity-below");
    }

    /** Every day of a rule is one in its site's time zone, and there is no site without one. */
    @Test
    void neverMeetsASiteWithoutATimeZone() {
        assertThatThrownBy(() -> jdbc.sql("insert into site (name, zone) values ('Nowhere', null)")
                        .update())
                .isInstanceOf(DataIntegrityViolationException.class);
    }

    @Test
    void makesARuleForAPlaceOneForItsChecklistsKindThere() {
        long site = places.addSite(
                        new SiteDraft("Dyer Court", ZoneId.of("America/Chicago"), null, null, List.of()), ilse)
                .id();
        Trigger weekly = new Trigger.Calendar(Period.ofWeeks(1));

        long narrow = rules.add(draft(new Scope.AtSite(site), "monthly-sump-with-float", 3, weekly), ilse);
        long wide = rules.add(draft(new Scope.AtSite(site), "electrical-test", 3, weekly), ilse);

        assertThat(rules.rule(narrow).scope()).isEqualTo(new Scope.AtSite(site, PumpKind.SUMP_WITH_FLOAT));
        assertThat(rules.rule(wide).scope()).isEqualTo(new Scope.AtSite(site));
    }

    @Test
    void refusesWhatMakesNoSenseEachAtItsField() {
        Scope engines = new Scope.OfKind(PumpKind.ENGINE_TRASH);
        String list = "opening-engine-trash";
        assertThat(refusals(draft(engines, list, 14))).containsExactly("triggers rules.trigger.none");
        assertThat(refusals(draft(
                        engines,
                        list,
                        14,
                        new Trigger.Calendar(Period.ZERO),
                        new Trigger.Calendar(Period.of(0, 1, 1)),
                        new Trigger.Calendar(Period.ofMonths(121)),
                        new Trigger.Season(WindowKind.RUNNING),
                        new Trigger.RunHours(BigDecimal.ZERO, new BigDecimal("-1")),
                        new Trigger.Idle(0, 367),
                        new Trigger.Condition(Measure.CAPACITY, 80, -1),
                        new Trigger.Condition(Measure.STARTS_PER_HOUR, Double.NaN, 0))))
                .containsExactly(
                        "triggers[0].count rules.trigger.zero",
                        "triggers[1].count rules.trigger.mixed",
                        "triggers[2].count rules.trigger.tenYears",
                        "triggers[3].window rules.trigger.window",
                        "triggers[4].every rules.trigger.zero",
                        "triggers[4].first rules.trigger.zero",
                        "triggers[5].count rules.days",
                        "triggers[5].days rules.days",
                        "triggers[6].days rules.days",
                        "triggers[6].limit rules.trigger.limit",
                        "triggers[7].limit rules.trigger.limit");
        Trigger monthly = new Trigger.Calendar(Period.ofMonths(1));
        assertThat(refusals(draft(engines, list, 28, monthly))).containsExactly("opensDaysBefore rules.opens.tooEarly");
        assertThat(refusals(draft(engines, "opening-sewage", 14, monthly)))
                .containsExactly("checklistId rules.checklist.otherKind");
        assertThat(refusals(draft(new Scope.Every(), list, 14, monthly)))
                .containsExactly("checklistId rules.checklist.otherKind");
        rules.add(draft(engines, list, 27, monthly), ilse);
    }
}
