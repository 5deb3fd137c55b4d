package freshet.rules;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.Pages;
import freshet.Pages.Page;
import freshet.TestClock;
import freshet.care.CareYard;
import freshet.checklists.Checklists;
import freshet.happenings.HappeningKind;
import freshet.people.People;
import freshet.places.Places;
import freshet.places.PositionDraft;
import freshet.places.PositionKind;
import freshet.pumps.PumpKind;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import freshet.readings.MeterKind;
import freshet.readings.ReadingDraft;
import freshet.readings.Readings;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.MonthDay;
import java.time.Period;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;

@FreshetTest
class RulePagesTests {

    @Autowired
    MockMvc mvc;

    @Autowired
    CareYard yard;

    @Autowired
    CareRules rules;

    @Autowired
    Checklists checklists;

    @Autowired
    Pumps pumps;

    @Autowired
    Places places;

    @Autowired
    People people;

    @Autowired
    Readings readings;

    @Autowired
    TestClock clock;

    @Autowired
    JdbcClient jdbc;

    Unit unit;
    Pages pages;

    @BeforeEach
    void signIn() {
        unit = yard.unit("BF-07");
        pages = Pages.signedIn(mvc, "ilse", "river at thaw");
    }

    private CareRule rule(String code) {
        return rules.rules().stream()
                .filter(rule -> rule.code().equals(code))
                .findFirst()
                .orElseThrow();
    }

    private String checklist(String code) {
        return checklists.checklists().stream()
                .filter(each -> each.code().equals(code))
                .map(each -> String.valueOf(each.id()))
                .findFirst()
                .orElseThrow();
    }

    /** What the form of a new rule for one pump sends, changed by the names and values given. */
    private String[] typed(String... changed) {
        List<String> all = new ArrayList<>(List.of(
                "name", "Oil of BF-07",
                "job", "oil-look",
                "scope", "UNIT",
                "tag", "BF-07",
                "triggers[0].kind", "RUN_HOURS",
                "triggers[0].every", "80",
                "triggers[0].first", "20",
                "triggers[1].kind", "CALENDAR",
                "triggers[1].count", "6",
                "triggers[1].unit", "MONTH",
                "checklistId", checklist("oil-chamber-look"),
                "fixed", "false",
                "followsPosition", "false",
                "opensDaysBefore", "14",
                "graceDays", "3",
                "applies", "ALWAYS",
                "press", "save"));
        for (int i = 0; i < changed.length; i += 2) {
            int at = all.indexOf(changed[i]);
            if (at >= 0) {
                all.set(at + 1, changed[i + 1]);
            } else {
                all.addAll(List.of(changed[i], changed[i + 1]));
            }
        }
        return all.toArray(String[]::new);
    }

    @Test
    void listsTheRulesByJobInPlainWordsWithTheirSource() {
        Page all = pages.open("/rules");
        assertThat(all.status()).isEqualTo(200);
        assertThat(all.text())
                .contains(
                        "Engine oil, every pump of this kind: Engine trash pump each 100 run hours, the first after 20"
                                + " or each 6 months, whichever comes first common practice, no source: first after 20 h")
                .contains("once in each opening")
                .contains("within 2 days after a storm, within 2 days after a power failure or within a day after a"
                        + " high-water alarm")
                .contains("within 14 days once its remaining capacity is below 80 %")
                .doesNotContain("??");
        assertThat(all.html().select("main section").size()).isGreaterThan(25);

        Page sewage = pages.open("/rules?kind=SEWAGE");
        assertThat(sewage.text()).contains("Service of the lifting plant").doesNotContain("Engine oil");
    }

    @Test
    void keepsANewRuleForOnePumpAndSaysWhyItHoldsThere() {
        CareRule like = rule("oil-look-utility-submersible");
        rules.wake(like.id(), like.version(), people.personNamed("ilse").orElseThrow());

        Page before = pages.open("/pumps/" + unit.id() + "/rules");
        assertThat(before.text())
                .contains("Look at the oil in its chamber: each 250 run hours, the first after 50")
                .contains("It holds because it is set for every pump of this kind: Utility submersible.");
        String another = before.html()
                .select("main a[href*=like=" + like.id() + "]")
                .first()
                .attr("href");
        Page form = pages.open(another);
        assertThat(form.value("tag")).isEqualTo("BF-07");
        assertThat(form.value("triggers[0].every")).isEqualTo("250");
        assertThat(form.html().select("input[name=scope][checked]").val()).isEqualTo("UNIT");
        assertThat(form.html().select("select[name=job] option[selected]").val())
                .isEqualTo("oil-look");
        assertThat(form.html()
                        .select("select[name=checklistId] option[selected]")
                        .text())
                .isEqualTo("Look at the oil in its chamber");

        Page saved = pages.submit("/rules/new", typed());
        assertThat(saved.status()).isEqualTo(302);
        CareRule added = rules.rules().get(rules.rules().size() - 1);
        assertThat(saved.location()).isEqualTo("/rules/" + added.id());
        assertThat(added.scope()).isEqualTo(new Scope.OfUnit(unit.id()));
        assertThat(added.triggers())
                .containsExactly(
                        new Trigger.RunHours(BigDecimal.valueOf(80), BigDecimal.valueOf(20)),
                        new Trigger.Calendar(Period.ofMonths(6)));
        assertThat(pages.open("/pumps/" + unit.id() + "/rules").text())
                .contains("Oil of BF-07: each 80 run hours, the first after 20 or each 6 months, whichever comes first")
                .contains("It holds because it is set for BF-07 alone. The rule for every pump of this kind: Utility"
                        + " submersible would say: each 250 run hours, the first after 50.")
                .doesNotContain("??");
        assertThat(jdbc.sql("select action from audit_entry where subject = 'rule:" + added.id() + "'")
                        .query(String.class)
                        .list())
                .containsExactly("rule added");
    }

    @Test
    void saysWhyNoDateCanBeForetoldFromAMeter() {
        clock.set("2026-06-20T15:00:00Z");
        CareRule byHours = rule("oil-look-utility-submersible");
        rules.wake(byHours.id(), byHours.version(), people.personNamed("ilse").orElseThrow());
        assertThat(unitRules()).contains("Run hours: never read here, so no date can be foretold.");
        read("2026-06-10T12:00:00Z", "10");
        read("2026-06-10T16:00:00Z", "12");
        assertThat(unitRules()).contains("Run hours: read only once so far, or twice on one day (10 Jun)");
        read("2026-06-15T12:00:00Z", "40");
        assertThat(unitRules()).doesNotContain("foretold");
    }

    private String unitRules() {
        return pages.open("/pumps/" + unit.id() + "/rules").text();
    }

    private void read(String at, String hours) {
        readings.recordReading(
                ReadingDraft.of(unit.id(), MeterKind.RUN_HOURS, Instant.parse(at), new BigDecimal(hours)),
                people.personNamed("ilse").orElseThrow());
    }

    @Test
    void readsEveryTriggerAndEveryPartOfTheForm() {
        long site = unit.stand().siteId();
        var me = people.personNamed("ilse").orElseThrow();
        long pit = places.addPosition(new PositionDraft(site, "North pit", PositionKind.PIT, null), me)
                .id();
        pages.submit(
                "/rules/new",
                typed(
                        "scope", "POSITION",
                        "site", unit.stand().siteName(),
                        "position", "north pit",
                        "job", "",
                        "ownJob", "Lid and ladder",
                        "triggers[0].kind", "CONDITION",
                        "triggers[0].measure", "HOURS_APART",
                        "triggers[0].limit", "12.5",
                        "triggers[0].days", "10",
                        "triggers[1].kind", "EVENT",
                        "triggers[1].event", "HIGH_WATER",
                        "triggers[1].firstOnly", "true",
                        "triggers[1].days", "0",
                        "triggers[2].kind", "IDLE",
                        "triggers[2].count", "90",
                        "triggers[2].days", "7",
                        "triggers[3].kind", "RELOCATED",
                        "triggers[3].days", "3",
                        "triggers[4].kind", "SEASON",
                        "triggers[4].window", "CLOSING",
                        "triggers[5].kind", "STARTS",
                        "triggers[5].every", "2000",
                        "checklistId", checklist("monthly-sump-with-float"),
                        "fixed", "true",
                        "followsPosition", "true",
                        "oncePerSeason", "true",
                        "applies", "IN_USE",
                        "accessFromDay", "1",
                        "accessFromMonth", "NOVEMBER",
                        "accessToDay", "29",
                        "accessToMonth", "FEBRUARY",
                        "covers", "weekly",
                        "source", "Local rules"));

        CareRule added = rules.rules().get(rules.rules().size() - 1);
        assertThat(RuleDraft.of(added))
                .isEqualTo(new RuleDraft(
                        "Lid and ladder",
                        "Oil of BF-07",
                        new Scope.InPosition(pit, PumpKind.SUMP_WITH_FLOAT),
                        List.of(
                                new Trigger.Condition(Measure.HOURS_APART, 0.125, 10),
                                new Trigger.Event(HappeningKind.HIGH_WATER, true, 0),
                                new Trigger.Idle(90, 7),
                                new Trigger.Relocated(3),
                                new Trigger.Season(freshet.places.WindowKind.CLOSING),
                                new Trigger.Starts(BigDecimal.valueOf(2000), null)),
                        added.checklistId(),
                        true,
                        true,
                        14,
                        3,
                        MonthDay.of(11, 1),
                        MonthDay.of(2, 29),
                        true,
                        Applies.IN_USE,
                        Set.of("weekly"),
                        "Local rules"));
        Page again = pages.open("/rules/" + added.id());
        assertThat(again.value("triggers[0].limit")).isEqualTo("12.5");
        assertThat(again.value("accessToDay")).isEqualTo("29");
        assertThat(again.text()).contains("whichever pump stands in North pit").doesNotContain("??");
    }

    @Test
    void addsAndTakesTriggersWithoutScriptAndKeepsNothingYet() {
        int all = rules.rules().size();
        Page more = pages.submit("/rules/new", typed("press", "add", "addKind", "EVENT"));
        assertThat(more.status()).isEqualTo(200);
        assertThat(more.html().select("#triggers fieldset")).hasSize(3);
        assertThat(more.value("triggers[2].days")).isEqualTo("2");
        assertThat(more.value("triggers[0].every")).isEqualTo("80");

        Page fewer = pages.submit("/rules/new", typed("press", "out-0"));
        assertThat(fewer.html().select("#triggers fieldset")).hasSize(1);
        assertThat(fewer.value("triggers[0].count")).isEqualTo("6");
        assertThat(fewer.value("name")).isEqualTo("Oil of BF-07");
        assertThat(rules.rules()).hasSize(all);
    }

    @Test
    void refusesEachWrongAtItsFieldAndKeepsWhatWasTyped() {
        int all = rules.rules().size();
        Page wrong = pages.submit(
                "/rules/new",
                typed(
                        "name", "",
                        "tag", "BF-99",
                        "triggers[0].every", "many",
                        "triggers[1].count", "",
                        "graceDays", "a few",
                        "accessFromDay", "31",
                        "accessFromMonth", "JUNE",
                        "checklistId", ""));
        assertThat(wrong.status()).isEqualTo(422);
        assertThat(wrong.wrong("name")).contains("Give the rule a name");
        assertThat(wrong.wrong("tag")).contains("BF-99");
        assertThat(wrong.wrong("triggers[0].every")).isNotBlank();
        assertThat(wrong.wrong("triggers[1].count")).contains("Give a number");
        assertThat(wrong.wrong("graceDays")).contains("not a whole number");
        assertThat(wrong.wrong("accessFromDay")).contains("June");
        assertThat(wrong.wrong("checklistId")).contains("Choose a checklist");
        assertThat(wrong.value("triggers[0].every")).isEqualTo("many");
        assertThat(wrong.value("graceDays")).isEqualTo("a few");

        assertThat(pages.submit("/rules/new", typed("triggers[1].count", "0")).wrong("triggers[1].count"))
                .contains("more than 0");
        assertThat(pages.submit("/rules/new", typed("triggers[1].count", "121")).wrong("triggers[1].count"))
                .contains("Ten years at most");
        assertThat(pages.submit("/rules/new", typed("opensDaysBefore", "181")).wrong("opensDaysBefore"))
                .contains("fewer than 181 days");
        assertThat(pages.submit("/rules/new", typed("accessFromDay", "1", "accessFromMonth", "APRIL"))
                        .wrong("accessToMonth"))
                .contains("both days, or neither");
        assertThat(pages.submit(
                                "/rules/new",
                                typed(
                                        "triggers[0].kind", "CONDITION",
                                        "triggers[0].measure", "CAPACITY",
                                        "triggers[0].limit", "800",
                                        "triggers[0].days", "7"))
                        .wrong("triggers[0].limit"))
                .contains("from 1 to 120");
        Page other = pages.submit("/rules/new", typed("checklistId", checklist("opening-sewage")));
        assertThat(other.wrong("checklistId")).contains("another kind of pump: Sewage pump");
        String[] none = {
            "name",
            "No trigger",
            "job",
            "monthly",
            "scope",
            "EVERY",
            "checklistId",
            checklist("weekly-look"),
            "opensDaysBefore",
            "0",
            "graceDays",
            "0",
            "press",
            "save"
        };
        Page without = pages.submit("/rules/new", none);
        assertThat(without.status()).isEqualTo(422);
        assertThat(without.wrong("triggers")).contains("add a trigger");
        assertThat(rules.rules()).hasSize(all);
        assertThat(pages.submit("/rules/new", typed("scope", "NOBODY")).status())
                .isEqualTo(400);
    }

    @Test
    void saysWhatStandsNowWhenSomebodyChangedARuleMeanwhile() {
        CareRule rule = rule("opening-engine-trash");
        pages.submit("/rules/" + rule.id() + "/rest", "version", String.valueOf(rule.version()));

        Page stale = pages.submit(
                "/rules/" + rule.id(),
                typed("version", String.valueOf(rule.version()), "scope", "KIND", "kind", "ENGINE_TRASH"));

        assertThat(stale.status()).isEqualTo(409);
        assertThat(stale.value("name")).isEqualTo("Oil of BF-07");
        assertThat(stale.text("section.warn"))
                .contains("Name of the rule Opening")
                .doesNotContain("??");
        assertThat(stale.value("version")).isEqualTo(String.valueOf(rule.version() + 1));
        Page saved = pages.submit(
                "/rules/" + rule.id(),
                typed("version", stale.value("version"), "scope", "KIND", "kind", "ENGINE_TRASH"));
        assertThat(saved.location()).isEqualTo("/rules/" + rule.id());
        assertThat(rules.rule(rule.id()).name()).isEqualTo("Oil of BF-07");
        assertThat(pages.submit("/rules/" + rule.id() + "/wake", "version", "0").status())
                .isEqualTo(409);
    }

    @Test
    void letsATechnicianReadTheRulesAndChangeNone() {
        yard.teo();
        Pages teo = Pages.signedIn(mvc, "teo", "mud on boots");
        CareRule oil = rule("engine-oil-engine-trash");

        Page read = teo.open("/rules/" + oil.id());
        assertThat(read.text())
                .contains("Engine oil It is at rest and makes nothing due.")
                .contains("each 100 run hours, the first after 20 or each 6 months, whichever comes first")
                .contains("from the day it was done")
                .contains("14 days before it is due")
                .doesNotContain("??");
        assertThat(read.html().select("main form")).isEmpty();
        assertThat(teo.open("/rules").html().select("main form, main a[href$=new]"))
                .isEmpty();
        assertThat(teo.open("/pumps/" + unit.id() + "/rules").html().select("main a[href*=new]"))
                .isEmpty();
        assertThat(teo.open("/rules/new").status()).isEqualTo(403);
        assertThat(teo.submit("/rules/new", typed()).status()).isEqualTo(403);
        assertThat(teo.submit("/rules/" + oil.id(), typed()).status()).isEqualTo(403);
        assertThat(teo.submit("/rules/" + oil.id() + "/wake", "version", "0").status())
                .isEqualTo(403);
        assertThat(rules.rule(oil.id())).isEqualTo(oil);
    }
}
