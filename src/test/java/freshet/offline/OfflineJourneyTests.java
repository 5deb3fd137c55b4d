package freshet.offline;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.selenium.AxeBuilder;
import freshet.Browser;
import freshet.FreshetTest;
import freshet.TestClock;
import freshet.care.Answer;
import freshet.care.Care;
import freshet.care.CareYard;
import freshet.care.ServiceRecord;
import freshet.care.SignOff;
import freshet.care.Task;
import freshet.care.Worksheet;
import freshet.checklists.CheckLine;
import freshet.checklists.Phase;
import freshet.people.Person;
import freshet.pumps.Unit;
import freshet.readings.MeterKind;
import freshet.readings.Readings;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.support.ui.WebDriverWait;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;

/** A technician goes down where no signal is, in a real browser whose cable to the server is really cut, and comes back. */
@FreshetTest
class OfflineJourneyTests {

    // the browser's own clock runs months ahead of this: what was done is dated all the same
    private static final Instant MORNING = Instant.parse("2026-03-14T14:00:00Z");

    private static final String FILL = """
            for (const [name, value] of Object.entries(arguments[0])) {
              for (const field of document.getElementsByName(name)) {
                if (field.type === "radio" || field.type === "checkbox") {
                  if (field.value === value) { field.click(); }
                } else {
                  field.value = value;
                  field.dispatchEvent(new Event("input", { bubbles: true }));
                  field.dispatchEvent(new Event("change", { bubbles: true }));
                }
              }
            }""";

    @LocalServerPort
    int port;

    @TempDir
    Path phone;

    @Autowired
    Care care;

    @Autowired
    Readings readings;

    @Autowired
    CareYard yard;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TestClock clock;

    private Person ilse;
    private Person teo;
    private Unit near;
    private Unit far;
    private Cable cable;
    private Browser browser;

    @BeforeEach
    void inTheYard() {
        clock.set(MORNING);
        ilse = yard.ilse();
        teo = yard.teo();
        near = yard.unit("BF-04");
        far = yard.unit("BF-07");
        yard.askInstrument(opening(near).checklistId(), "Running amps");
        cable = new Cable(port);
        browser = Browser.keeping(phone, cable.port());
        browser.signIn("teo", "mud on boots")
                .go("/take-along?site=" + near.stand().siteId());
        if (!browser.driver().findElement(By.cssSelector("input[name=site]")).isSelected()) {
            throw new IllegalStateException("the place does not come ticked");
        }
        browser.picture("offline-take-390");
        browser.driver().findElement(By.cssSelector("#take button")).click();
        browser.awaitPath("/offline");
        ready();
    }

    @AfterEach
    void home() {
        browser.close();
        cable.close();
    }

    private void ready() {
        new WebDriverWait(browser.driver(), Duration.ofSeconds(10))
                .until(chrome -> "yes"
                        .equals(browser.driver().executeScript("return document.documentElement.dataset.ready ?? ''")));
    }

    private void await(String words) {
        Instant patience = Instant.now().plusSeconds(20);
        String says = "";
        while (!says.contains(words)) {
            assertThat(Instant.now()).as(words + " in: " + says).isBefore(patience);
            try {
                says = String.valueOf(browser.driver().executeScript("return document.body?.innerText"));
            } catch (WebDriverException between) {
                // the page is changing
                says = "";
            }
        }
    }

    private void open(String path) {
        browser.go("/offline?sheet=" + path);
        ready();
    }

    private void tap(String css) {
        var target = browser.driver().findElement(By.cssSelector(css));
        browser.driver().executeScript("arguments[0].scrollIntoView({block: 'center'})", target);
        target.click();
    }

    private Task opening(Unit unit) {
        return care.tasksOf(unit.id()).stream()
                .filter(task -> task.phase() == Phase.OPENING && task.openOn(LocalDate.parse("2026-03-14")))
                .findFirst()
                .orElseThrow();
    }

    private void sign(Unit unit) {
        Worksheet sheet = care.worksheet(opening(unit).id());
        open("/tasks/" + sheet.task().id());
        browser.driver()
                .executeScript(
                        FILL,
                        CareYard.allPass(sheet, teo).stream()
                                .collect(Collectors.toMap(
                                        answer -> "line[c" + answer.lineId() + "].answer", Answer::answer)));
        browser.driver().executeScript(FILL, Map.of("instrument", "Plug-in meter 1"));
        tap(".sign .first");
        await("Written down on this phone");
        ready();
    }

    private void read(Unit unit, String hours) {
        open("/pumps/" + unit.id() + "/reading");
        browser.type("value", hours);
        tap("#sheet form button.press");
        await("Written down on this phone");
        ready();
    }

    private void timeADrum(Unit unit) {
        open("/pumps/" + unit.id() + "/flow-test");
        tap("[data-press=start]");
        tap("[data-press=lap]");
        assertThat(browser.driver().findElement(By.id("lap1")).getAttribute("value"))
                .as("the stopwatch runs without a network")
                .isNotEmpty();
        browser.driver()
                .executeScript(
                        FILL,
                        Map.of(
                                "container",
                                "60 L",
                                "lap1",
                                "38.1",
                                "lap2",
                                "38.3",
                                "lap3",
                                "38.0",
                                "lift",
                                "3 m",
                                "pieces[0].bore",
                                "38 mm",
                                "pieces[0].length",
                                "10 m"));
        tap("#sheet button.press[value=work]");
        await("Written down on this phone");
        ready();
    }

    @Test
    void worksARoundWithoutANetworkAndKeepsBothWhereSomebodyElseSignedMeanwhile() {
        cable.cut();
        browser.go("/pumps");
        ready();
        assertThat(browser.path()).as("any page leads there").isEqualTo("/offline");
        assertThat(browser.text()).contains("BF-04", "BF-07", "Opening 2026", "Taken along");
        browser.picture("offline-with-me-390").phone();
        browser.type("seek-tag", "bf-04");
        tap("#seek button");
        await("Read the meter");
        browser.picture("offline-unit-390").phone();

        open("/tasks/" + opening(near).id());
        assertThat(browser.text()).contains("Caution", "Needs a person competent for electrical work");
        CheckLine amps = CareYard.line(care.worksheet(opening(near).id()), "Running amps");
        browser.driver().executeScript(FILL, Map.of("line[c" + amps.id() + "].answer", "4.4"));
        tap(".sign .first");
        await("to put right");
        assertThat(browser.text()).contains("Nothing can be signed without it", "Say what this was measured with");
        browser.picture("offline-task-390").phone();
        assertThat(faults()).isEmpty();
        read(near, "412.6");
        timeADrum(near);
        sign(near);
        sign(far);
        assertThat(browser.text()).contains("4 waiting to be sent");
        browser.picture("offline-outbox-390").phone();
        assertThat(faults()).isEmpty();
        Worksheet sheet = care.worksheet(opening(far).id());
        care.sign(sheet.task().id(), SignOff.of(sheet.task().version(), CareYard.allPass(sheet, ilse)), ilse);

        clock.advance(Duration.ofHours(5));
        cable.mend();
        tap("#pocket [data-send]");
        await("1 to settle");
        ServiceRecord mine = care.recordsOf(near.id()).get(0);
        assertThat(mine.signedName()).isEqualTo("Teo Brandt");
        assertThat(mine.instrument()).isEqualTo("Plug-in meter 1");
        assertThat(mine.endedAt()).isBetween(MORNING, MORNING.plus(Duration.ofMinutes(10)));
        assertThat(mine.signedAt()).isEqualTo(MORNING.plus(Duration.ofHours(5)));
        assertThat(care.recordsOf(far.id()))
                .extracting(ServiceRecord::signedName)
                .containsExactly("Ilse Marrow");
        assertThat(readings.log(near.id(), MeterKind.RUN_HOURS).last().at())
                .isBetween(MORNING, MORNING.plus(Duration.ofMinutes(10)));
        assertThat(jdbc.sql("select ordinal from delivery order by id")
                        .query(Long.class)
                        .list())
                .isSorted()
                .hasSize(4);
        assertThat(readings.flowTests(near.id())).hasSize(1);
        assertThat(browser.text()).doesNotContain("waiting to be sent");

        browser.driver()
                .findElement(By.cssSelector("[data-part=sent] a[href*=conflicts]"))
                .click();
        await("Somebody else signed this task meanwhile");
        browser.picture("offline-conflict-390").phone();
        assertThat(faults()).isEmpty();
        tap("input[value=KEEP]");
        tap("main form button.press");
        await("Settled");
        assertThat(browser.text()).doesNotContain("to settle:");
    }

    private List<String> faults() {
        return new AxeBuilder()
                        .withTags(List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"))
                        .analyze(browser.driver())
                        .getViolations()
                        .stream()
                        .map(rule ->
                                rule.getId() + ": " + rule.getNodes().get(0).getHtml())
                        .toList();
    }

    @Test
    void losesNothingWhenThePhoneDiesTheSignInEndsAndAnswersAreLost() {
        cable.cut();
        open("/pumps/" + far.id() + "/finding");
        assertThat(browser.text()).contains("A photo is added where there is a signal");
        assertThat(browser.driver().executeScript("return document.querySelectorAll('input[type=file]').length"))
                .as("no photo is taken that would be dropped")
                .isEqualTo(0L);
        browser.driver().executeScript(FILL, Map.of("what", "Cord jacket split at the gland"));
        read(near, "412.6");
        browser.close();

        browser = Browser.keeping(phone, cable.port());
        browser.go("/offline");
        ready();
        assertThat(browser.text()).contains("1 waiting to be sent", "There is no connection");
        open("/pumps/" + far.id() + "/finding");
        assertThat(browser.driver().findElement(By.id("what")).getAttribute("value"))
                .as("half typed, not sent")
                .isEqualTo("Cord jacket split at the gland");

        cable.mend();
        browser.driver().manage().deleteAllCookies();
        browser.go("/offline");
        await("Sign in to send them");
        assertThat(readings.log(near.id(), MeterKind.RUN_HOURS).lines()).isEmpty();
        // not a number of them: a browser asks again by itself when a connection that it had kept open ends without an
        // answer
        cable.loseAnswers(Integer.MAX_VALUE);
        browser.signIn("teo", "mud on boots");
        new WebDriverWait(browser.driver(), Duration.ofSeconds(15)).until(chrome -> cable.deliveries() >= 2);
        await("1 waiting to be sent");
        assertThat(readings.log(near.id(), MeterKind.RUN_HOURS).lines()).hasSize(1);
        cable.loseAnswers(0);
        browser.go("/offline");
        await("arrived");
        assertThat(cable.deliveries()).isGreaterThan(2);
        assertThat(readings.log(near.id(), MeterKind.RUN_HOURS).lines()).hasSize(1);
        assertThat(jdbc.sql("select count(*) from delivery").query(Long.class).single())
                .isOne();

        browser.go("/account").press("Sign out");
        browser.go("/offline");
        ready();
        assertThat(browser.text()).contains("Nothing was taken along").doesNotContain("BF-04");
    }
}
