package freshet;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.care.Care;
import freshet.care.CareYard;
import freshet.places.Places;
import freshet.places.PositionDraft;
import freshet.places.PositionKind;
import freshet.pumps.Unit;
import freshet.readings.MeterKind;
import freshet.readings.ReadingDraft;
import freshet.readings.Readings;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;

/** In gloves, in a dark cellar, on the smallest phone: whatever a form has to press is large enough, and is told from its ground. */
@FreshetTest
class BigTargetsTests {

    /** The smallest side of a target, in CSS pixels: WCAG 2.2, success criterion 2.5.5 (enhanced). */
    private static final int LEAST = 44;

    /** Everything to press in a form and every press outside; a small box counts with the label that is pressed for it. */
    private static final String SMALL = """
            document.querySelectorAll("details").forEach((each) => each.open = true);
            document.querySelectorAll("[data-fails]").forEach((each) => each.checked = true);
            const all = document.querySelectorAll("form :is(button, input, select, textarea, summary, a), main .press, main summary");
            return [...all].filter((each) => each.type !== "hidden" && !each.closest(".hide"))
              .map((each) => ["checkbox", "radio", "file"].includes(each.type) ? each.closest("label") ?? each : each)
              .filter((each) => each.checkVisibility({ visibilityProperty: true }))
              .map((each) => [each, each.getBoundingClientRect()])
              .filter(([each, box]) => box.height < arguments[0] - .01 || box.width < arguments[0] - .01)
              .map(([each, box]) => `${each.tagName} ${each.id || each.name || each.textContent.trim().slice(0, 40)}: `
                + `${box.width.toFixed(1)} x ${box.height.toFixed(1)}`);""";

    /** Whether this is the page that was asked for, with something to press. */
    private static final String THERE = """
            const status = performance.getEntriesByType("navigation")[0].responseStatus;
            return (status === 200 || status === 422) && document.querySelector("main :is(button, .press)") !== null;""";

    private static final String WIDER = """
            return document.documentElement.scrollWidth - document.documentElement.clientWidth;""";

    @LocalServerPort
    int port;

    @Autowired
    CareYard yard;

    @Autowired
    Places places;

    @Autowired
    Readings readings;

    @Autowired
    Care care;

    @Autowired
    TestClock clock;

    Browser browser;
    List<String> forms;

    @BeforeEach
    void standInACellar() {
        clock.set("2026-03-14T15:00:00Z");
        Unit unit = yard.unit("BF-07");
        long id = unit.id();
        readings.recordReading(
                ReadingDraft.of(
                        id, MeterKind.RUN_HOURS, Instant.parse("2026-03-12T15:00:00Z"), new BigDecimal("412.6")),
                yard.ilse());
        long site = unit.stand().siteId();
        long position = places.addPosition(new PositionDraft(site, "North pit", PositionKind.PIT, null), yard.ilse())
                .id();
        long task = care.tasksOf(id).stream()
                .filter(each -> each.open())
                .findFirst()
                .orElseThrow()
                .id();
        forms = new ArrayList<>(List.of(
                "/pumps/" + id,
                "/pumps/" + id + "/reading",
                "/pumps/" + id + "/meter-swap",
                "/pumps/" + id + "/readings",
                "/pumps/" + id + "/flow-test",
                "/pumps/" + id + "/finding",
                "/pumps/" + id + "/edit",
                "/pumps/" + id + "/move",
                "/pumps/" + id + "/kit",
                "/pumps/" + id + "/retire",
                "/tasks/" + task,
                "/pumps",
                "/pumps/new",
                "/pumps/models/new",
                "/pumps/models/" + unit.model().id() + "/edit",
                "/places/sites/new",
                "/places/sites/" + site + "/edit",
                "/places/sites/" + site + "/positions/new",
                "/places/positions/" + position + "/edit",
                "/places/customers/new",
                "/people/new",
                "/account",
                "/import",
                "/labels",
                "/scan",
                "/find?tag=BF-08 F",
                "/pumps/" + id + "/readings?withdraw="
                        + readings.log(id, MeterKind.RUN_HOURS).last().readingId()));
        browser = Browser.at(port).size(360, 740);
    }

    /** Sizes do not change in the dark; contrast in both schemes is looked at with the gallery. */
    @Test
    void canBePressedInGloves() {
        List<String> wrong = new ArrayList<>();
        browser.go("/sign-in");
        wrong.addAll(wrongs("/sign-in"));
        browser.signIn("ilse", "river at thaw");
        for (String form : forms) {
            browser.go(form);
            wrong.addAll(wrongs(form));
        }
        assertThat(wrong).isEmpty();
    }

    private List<String> wrongs(String form) {
        List<String> wrong = new ArrayList<>();
        if (!Boolean.TRUE.equals(browser.driver().executeScript(THERE))) {
            wrong.add(form + " is not there: " + browser.path());
        }
        List<?> small = (List<?>) browser.driver().executeScript(SMALL, LEAST);
        small.forEach(each -> wrong.add(form + " has a small target: " + each));
        int wider = ((Number) browser.driver().executeScript(WIDER)).intValue();
        if (wider > 0) {
            wrong.add(form + " is " + wider + " px too wide");
        }
        return wrong;
    }
}
