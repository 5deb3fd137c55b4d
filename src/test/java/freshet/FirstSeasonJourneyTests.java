package freshet;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.care.Care;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;

/** The first season in a real browser: an empty install, a fleet from spreadsheets, an opening signed on a phone, a weak pump found. */
@FreshetTest
class FirstSeasonJourneyTests {

    private static final Path FILES = Path.of("src/main/resources/example").toAbsolutePath();
    private static final Map<String, String> PASSING = Map.of(
            "A", "4.5", "V", "118", "Ω", "0.2", "MΩ", ">200", "°F", "46", "°C", "8", "in", "0.02", "mm", "0.6", "s",
            "5");

    @LocalServerPort
    int port;

    @Autowired
    Pumps pumps;

    @Autowired
    Care care;

    @Autowired
    TestClock clock;

    private Browser browser;

    @Test
    void bringsAFleetThroughItsFirstOpening() {
        clock.set("2027-03-14T15:00:00Z");
        browser = Browser.at(port).desk();

        browser.go("/welcome")
                .type("signInName", "ilse")
                .type("fullName", "Ilse Marrow")
                .type("password", "river at thaw")
                .press("Make the owner's account")
                .signIn("ilse", "river at thaw");
        assertThat(browser.text()).contains("No pump is kept here yet");
        browser.picture("first-empty-1280");

        browser.go("/import");
        browser.driver()
                .findElement(By.id("files"))
                .sendKeys(Stream.of("customers", "sites", "positions", "models", "units", "kit", "readings")
                        .map(kind -> FILES.resolve(kind + ".csv").toString())
                        .collect(Collectors.joining("\n")));
        browser.press("Look through them").picture("first-preview-1280");
        assertThat(pumps.unitTagged("BF-04"))
                .as("nothing is taken in by looking")
                .isEmpty();
        browser.press("Take them in");
        Unit unit = pumps.unitTagged("BF-04").orElseThrow();

        browser.go("/season").picture("first-season-1280");
        assertThat(browser.text()).contains("Brackenfold Pump Yard", "28 left");

        browser.go("/people/new")
                .type("signInName", "teo")
                .type("fullName", "Teo Brandt")
                .type("password", "mud on boots")
                .press("Save");
        assertThat(browser.text()).contains("Teo Brandt");
        browser.go("/account").press("Sign out");
        assertThat(browser.text()).contains("You are signed out");

        openAndSign(unit);
        testTheFlow(unit);
    }

    /** The technician finds the unit by its tag on a phone, works the opening through and signs it. */
    private void openAndSign(Unit unit) {
        browser.phone().signIn("teo", "mud on boots");
        assertThat(browser.text()).contains("Teo Brandt");
        browser.type("find-tag", "bf-04").press("Find");
        assertThat(browser.path()).isEqualTo("/pumps/" + unit.id());
        WebElement opening = browser.driver().findElement(By.partialLinkText("Opening 2027"));
        browser.driver().executeScript("arguments[0].scrollIntoView({block: 'center'})", opening);
        opening.click();
        browser.picture("first-task-390");
        assertThat(browser.text()).contains("Unplugged, and the plug is with me", "Turn the shaft by hand");

        browser.press("Sign as Teo Brandt");
        assertThat(browser.text()).as("signing nothing").contains("to put right");

        for (WebElement tick : browser.driver().findElements(By.cssSelector("fieldset.caution input[type=checkbox]"))) {
            tap(tick);
        }
        for (WebElement check : browser.driver().findElements(By.cssSelector("fieldset.check"))) {
            List<WebElement> passing =
                    check.findElements(By.cssSelector(":scope > .pick input[type=radio]:not([data-fails])"));
            if (!passing.isEmpty()) {
                tap(passing.get(0));
            }
        }
        for (WebElement field : browser.driver().findElements(By.cssSelector(".check > .answer.with-unit > input"))) {
            String measure =
                    field.findElement(By.xpath("following-sibling::span")).getText();
            field.clear();
            field.sendKeys(PASSING.get(measure));
        }
        browser.press("Sign as Teo Brandt").picture("first-record-390");
        assertThat(browser.text()).contains("Opening 2027", "Teo Brandt", "BF-04");
        assertThat(browser.path()).startsWith("/records/");
    }

    private void tap(WebElement target) {
        browser.driver().executeScript("arguments[0].scrollIntoView({block: 'center'})", target);
        browser.driver().executeScript("arguments[0].click()", target);
    }

    /** Three times on the drum, through a hose and an adapter: about two thirds of the rated flow. */
    private void testTheFlow(Unit unit) {
        browser.go("/pumps/" + unit.id() + "/flow-test");
        browser.type("container", "20")
                .type("lap1", "55.2")
                .type("lap2", "56.0")
                .type("lap3", "55.4")
                .type("lift", "8");
        browser.press("Work it out").picture("first-flow-test-390");
        assertThat(browser.text()).contains("of reference");
        browser.press("Keep this test");
        browser.go("/pumps/" + unit.id()).picture("first-unit-390");
        assertThat(browser.text()).contains("1 test", "± ", "Clean, measure the gap, test again");
        assertThat(care.tasksOf(unit.id()))
                .filteredOn(task -> task.title().startsWith("Clean, measure the gap"))
                .as("the weak pump's task is opened once")
                .hasSize(1);
        browser.go("/").picture("first-today-390");
        assertThat(browser.text()).contains("overdue", "Not ready or not sure, and why");
    }
}
