package freshet.example;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.results.Rule;
import com.deque.html.axecore.selenium.AxeBuilder;
import freshet.Browser;
import freshet.FreshetTest;
import freshet.TestClock;
import freshet.board.Board;
import freshet.care.Care;
import freshet.care.ServiceRecord;
import freshet.care.Task;
import freshet.exchange.Exchange;
import freshet.findings.Findings;
import freshet.hands.Hands;
import freshet.happenings.Happenings;
import freshet.hire.Hires;
import freshet.offline.Entry;
import freshet.offline.Offline;
import freshet.people.People;
import freshet.people.Person;
import freshet.photos.Photos;
import freshet.places.Places;
import freshet.pumps.Pumps;
import freshet.readings.Readings;
import freshet.repairs.Repairs;
import freshet.rounds.Rounds;
import freshet.rules.CareRules;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;

/**
 * Every screen of the example yard: a picture of each at phone, tablet and desk width for the gallery, no violation that axe
 * finds in light or dark, nothing wider than the phone or than a desk read at twice the size, no text that was left without its message,
 * and no more than 100 kB over the line at the first visit.
 */
@FreshetTest
class GalleryJourneyTests {

    private static final List<String> STANDARD = List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa");

    private static final long MOST_BYTES = 100_000;

    @LocalServerPort
    int port;

    @Autowired
    People people;

    @Autowired
    Pumps pumps;

    @Autowired
    Readings readings;

    @Autowired
    Findings findings;

    @Autowired
    Board board;

    @Autowired
    Care care;

    @Autowired
    Photos photos;

    @Autowired
    Exchange exchange;

    @Autowired
    Hires hires;

    @Autowired
    Happenings happenings;

    @Autowired
    Places places;

    @Autowired
    CareRules rules;

    @Autowired
    Rounds rounds;

    @Autowired
    Hands hands;

    @Autowired
    Repairs repairs;

    @Autowired
    Offline offline;

    @Autowired
    TestClock clock;

    private final List<String> wrong = new ArrayList<>();

    @Test
    void showsEveryScreenWithoutAFault() {
        clock.set("2027-03-14T19:40:00Z");
        new Example(
                        people,
                        pumps,
                        readings,
                        findings,
                        board,
                        care,
                        photos,
                        exchange,
                        hires,
                        happenings,
                        repairs,
                        places,
                        rules,
                        rounds,
                        hands,
                        clock)
                .setUp();
        Browser browser = Browser.at(port).signIn("ilse", Example.PASSWORD);
        screens().forEach((name, path) -> look(browser, name, path));
        assertThat(wrong).isEmpty();
    }

    private Map<String, String> screens() {
        long worn = pumps.unitTagged("BF-07").orElseThrow().id();
        Task task = care.tasksOf(worn).stream().filter(Task::open).findFirst().orElseThrow();
        ServiceRecord record = care.recordsOf(worn).get(0);
        long round = rounds.roundsOf(people.personNamed("freya").orElseThrow().id(), LocalDate.EPOCH)
                .get(0)
                .id();
        Map<String, String> screens = new LinkedHashMap<>();
        screens.put("today", "/");
        screens.put("fleet", "/pumps");
        screens.put("unit", "/pumps/" + worn);
        screens.put("season", "/season");
        screens.put("season-work", "/season/work");
        screens.put("hands", "/season/hands");
        screens.put("hand", "/season/hands/" + rounds.round(round).personId());
        screens.put("rounds", "/rounds");
        screens.put("round", "/rounds/" + round);
        screens.put("round-new", "/rounds/new?chosen=" + task.id() + "-0-0");
        screens.put("round-edit", "/rounds/" + round + "/edit");
        screens.put("round-print", "/rounds/" + round + "/print");
        screens.put(
                "no-access",
                "/rounds/" + round + "/stops/"
                        + rounds.round(round).left().get(0).id() + "/no-access");
        screens.put("getting-in", "/rounds/access/" + pumps.unit(worn).stand().siteId());
        screens.put("places", "/places");
        screens.put("site", "/places/sites/" + pumps.unit(worn).stand().siteId());
        screens.put("site-new", "/places/sites/new");
        screens.put("models", "/pumps/models");
        screens.put("model", "/pumps/models/" + pumps.unit(worn).model().id());
        screens.put("model-new", "/pumps/models/new");
        screens.put("unit-new", "/pumps/new");
        screens.put("unit-move", "/pumps/" + worn + "/move");
        screens.put("unit-kit", "/pumps/" + worn + "/kit");
        screens.put("reading", "/pumps/" + worn + "/reading");
        screens.put(
                "readings", "/pumps/" + pumps.unitTagged("BF-19").orElseThrow().id() + "/readings");
        screens.put("flow-test", "/pumps/" + worn + "/flow-test");
        screens.put(
                "kept-flow-test",
                "/flow-tests/" + readings.flowTests(worn).get(0).id());
        screens.put("task", "/tasks/" + task.id());
        screens.put("record", "/records/" + record.id());
        screens.put("finding-new", "/pumps/" + worn + "/finding");
        screens.put("finding", "/findings/" + findings.findingsOf(worn).get(0).id());
        long repair = repairs.openRepairs().get(0).id();
        screens.put("tag-out", "/pumps/" + worn + "/tag-out");
        screens.put(
                "finding-judge", "/findings/" + findings.findingsOf(worn).get(0).id() + "/judge");
        screens.put(
                "finding-put-off",
                "/findings/" + findings.findingsOf(worn).get(0).id() + "/put-off");
        screens.put("repairs", "/repairs");
        screens.put("repair-parts", "/repairs/parts");
        screens.put("repair", "/repairs/" + repair);
        screens.put("repair-plan", "/repairs/" + repair + "/plan");
        screens.put("repair-done", "/repairs/" + repair + "/done");
        screens.put("unit-photos", "/pumps/" + worn + "/photos");
        screens.put(
                "finding-with-photo",
                "/findings/"
                        + findings.findingsOf(
                                        pumps.unitTagged("BF-03").orElseThrow().id())
                                .get(0)
                                .id());
        screens.put("checklists", "/checklists");
        long list = task.checklistId();
        screens.put("checklist", "/checklists/" + list);
        screens.put("checklist-change", "/checklists/" + list + "/edit");
        screens.put("checklist-on-paper", "/checklists/" + list + "/print");
        screens.put("checklist-new", "/checklists/new?from=" + list);
        screens.put("happenings", "/happenings");
        screens.put("hires", "/hires");
        screens.put("hire", "/hires/" + hires.out(0, 1).get(0).id());
        screens.put("hire-return", "/hires/" + hires.out(0, 1).get(0).id() + "/return");
        screens.put("hire-swap", "/hires/" + hires.out(0, 1).get(0).id() + "/swap?with=BF-24");
        screens.put("issue", "/pumps/" + pumps.unitTagged("BF-24").orElseThrow().id() + "/issue");
        screens.put(
                "issue-refused",
                "/pumps/" + pumps.unitTagged("BF-03").orElseThrow().id() + "/issue");
        screens.put("hire-photos", "/hires/" + hires.past(0, 1).get(0).id() + "/photos");
        screens.put("hire-figures", "/hires/figures");
        screens.put("turn-away", "/hires/turn-away");
        screens.put("happening-new", "/happenings/new");
        screens.put("happening-of-unit", "/happenings/new?unit=" + worn);
        screens.put("rules", "/rules");
        screens.put("rule-new", "/rules/new");
        screens.put("unit-rules", "/pumps/" + worn + "/rules");
        screens.put("import", "/import");
        screens.put("jobs", "/jobs");
        screens.put("job-sheet", "/jobs/sheet");
        screens.put("pump-or-line", "/jobs/pump-or-line");
        screens.put("wear", "/pumps/" + pumps.unitTagged("BF-18").orElseThrow().id() + "/wear");
        screens.put("fleet-figures", "/fleet-figures");
        screens.put("notices", "/notices");
        screens.put("people", "/people");
        screens.put("person-new", "/people/new");
        screens.put("account", "/account");
        screens.put("timetable", "/timetable");
        screens.put("help", "/help");
        screens.put("help-flow-test", "/help/flow-test");
        screens.put("take-along", "/take-along");
        screens.put("offline", "/offline");
        screens.put("conflict", conflict(record));
        screens.put("conflicts", "/offline/conflicts");
        screens.put("offline-unit", "/take-along/units/" + worn);
        screens.put("no-such-page", "/pumps/999999");
        return screens;
    }

    /** A record's task, signed by another without a signal. */
    private String conflict(ServiceRecord record) {
        Person jonah = people.personNamed("jonah").orElseThrow();
        Entry entry = new Entry(
                UUID.randomUUID(),
                1,
                jonah.id(),
                Entry.Kind.TASK,
                record.taskId(),
                record.title() + ", " + record.tag(),
                clock.instant(),
                null,
                0,
                Entry.Known.NOTHING,
                Map.of("version", "0"));
        return String.valueOf(offline.deliver(entry, jonah).link());
    }

    private void look(Browser browser, String name, String path) {
        prefer(browser, "light");
        browser.driver().executeCdpCommand("Network.clearBrowserCache", Map.of());
        browser.size(1440, 900).go(path);
        if (bytes(browser) > MOST_BYTES) {
            wrong.add(path + " takes " + bytes(browser) + " bytes to a browser that has nothing of it yet");
        }
        browser.picture(name + "-1440").size(768, 1024).picture(name + "-768");
        // as at twice the size on a desk of 1280
        fits(browser.size(640, 450), path, 640);
        browser.size(360, 780).picture(name + "-360");
        fits(browser, path, 360);
        String text = browser.text();
        if (text.contains("??") || text.contains("Something went wrong here")) {
            wrong.add(path + " says "
                    + text.lines()
                            .filter(line -> line.contains("??") || line.contains("wrong here"))
                            .toList());
        }
        faults(browser, path, new AxeBuilder().withTags(STANDARD));
        prefer(browser, "dark");
        // only colors differ in the dark
        faults(browser, path + " in the dark", new AxeBuilder().withOnlyRules(List.of("color-contrast")));
    }

    /** What came over the line for the page and all that it needs. */
    private static long bytes(Browser browser) {
        return ((Number) browser.driver().executeScript("""
                return performance.getEntriesByType('navigation').concat(performance.getEntriesByType('resource'))
                    .reduce((sum, each) => sum + each.transferSize, 0)""")).longValue();
    }

    private void fits(Browser browser, String path, int room) {
        long width =
                ((Number) browser.driver().executeScript("return document.documentElement.scrollWidth")).longValue();
        if (width > room) {
            wrong.add(path + " is " + width + " px wide on a screen of " + room);
        }
    }

    private void faults(Browser browser, String where, AxeBuilder axe) {
        for (Rule rule : axe.analyze(browser.driver()).getViolations()) {
            wrong.add(
                    where + ": " + rule.getId() + ", " + rule.getNodes().get(0).getHtml());
        }
    }

    private static void prefer(Browser browser, String scheme) {
        browser.driver()
                .executeCdpCommand(
                        "Emulation.setEmulatedMedia",
                        Map.of("features", List.of(Map.of("name", "prefers-color-scheme", "value", scheme))));
    }
}
