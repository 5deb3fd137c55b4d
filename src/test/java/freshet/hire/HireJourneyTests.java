package freshet.hire;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.Browser;
import freshet.FreshetTest;
import freshet.TestClock;
import freshet.care.CareYard;
import freshet.pumps.Unit;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;

/** A pump goes over the counter and comes back, on a phone. */
@FreshetTest
class HireJourneyTests {

    @LocalServerPort
    int port;

    @Autowired
    HireYard desk;

    @Autowired
    Hires hires;

    @Autowired
    CareYard yard;

    @Autowired
    TestClock clock;

    @Test
    void handsAPumpOverTheCounterAndTakesItBack() {
        clock.set("2026-03-14T14:00:00Z");
        Unit unit = desk.ready("BF-04");
        Browser browser = Browser.at(port).signIn("ilse", "river at thaw").go("/pumps/" + unit.id() + "/issue");
        browser.picture("issue-390");
        browser.type("hirer", "Ansel Roofing").type("takenBy", "Jo Ferris");
        // a date field is typed in the order of the browser's language, so its value is set as it is sent
        browser.driver().executeScript("document.getElementById('dueBackOn').value = '2026-03-20'");
        for (WebElement box : browser.driver().findElements(By.cssSelector("[name=told], [name=kit]"))) {
            box.click();
        }
        browser.press("Send BF-04 out");
        assertThat(browser.text()).contains("out until Fri 20 Mar", "Never run it dry", "Jo Ferris");
        browser.picture("hire-390")
                .paper("hire-paper")
                .desk()
                .go(browser.path())
                .picture("hire-1280")
                .phone();

        clock.set("2026-03-16T14:00:00Z");
        browser.go("/hires/" + hires.openOf(unit.id()).orElseThrow().id() + "/return");
        browser.driver()
                .findElement(By.cssSelector("[name=cordIs][value=WHOLE]"))
                .click();
        browser.driver()
                .findElement(By.cssSelector("[name=liquid][value=SALT]"))
                .click();
        browser.press("Take BF-04 back");
        assertThat(browser.text()).contains("BF-04, back 16 Mar", "salt water");
        assertThat(browser.go("/pumps/" + unit.id()).text()).contains("pumped salt water");
    }
}
