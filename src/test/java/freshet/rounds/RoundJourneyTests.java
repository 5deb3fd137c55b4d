package freshet.rounds;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.Browser;
import freshet.FreshetTest;
import freshet.TestClock;
import freshet.care.CareYard;
import freshet.hands.Hands;
import freshet.places.Site;
import freshet.pumps.PumpKind;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;

@FreshetTest
class RoundJourneyTests {

    private static final Map<String, String> PASSING =
            Map.of("A", "4.5", "V", "118", "Ω", "0.2", "MΩ", ">200", "°F", "46", "°C", "8", "in", "0.02", "mm", "0.6");

    @LocalServerPort
    int port;

    @Autowired
    CareYard yard;

    @Autowired
    Rounds rounds;

    @Autowired
    Hands hands;

    @Autowired
    TestClock clock;

    Browser browser;

    @Test
    void choosesOnTheSeasonBoardPlansARoundAndWorksItsFirstTask() {
        clock.set("2027-03-14T19:40:00Z");
        hands.write(yard.ilse().id(), -1, 60, Set.of(), yard.ilse());
        LocalDate january = LocalDate.of(2027, 1, 1);
        Site court = yard.site("Dyer Court", CareYard.CHICAGO, CareYard.opening("Thaw", 2, 15, 3, 20));
        for (String tag : List.of("BF-04", "BF-05")) {
            yard.unit(tag, PumpKind.UTILITY_SUBMERSIBLE, yard.brackenfold().id(), january);
        }
        yard.unit("QM-104", PumpKind.SUMP_WITH_FLOAT, court.id(), january);
        rounds.writeAccess(yard.brackenfold().id(), -1, "Key under the third drum.", yard.ilse());

        browser = Browser.at(port).signIn("ilse", "river at thaw").go("/season").picture("round-season-390");
        assertThat(browser.text()).contains("Week 11 is short by", "Who will not be ready");
        browser.desk().go("/season").picture("round-season-1280").phone().go("/season");
        browser.press("Choose work for a round").awaitPath("/season/work");
        tap(browser.driver().findElement(By.cssSelector(".choose .all input")));
        browser.picture("round-choose-390").press("Plan a round");
        assertThat(browser.text()).contains("2 tasks: about 1 h 10", "BF-04", "BF-05");
        browser.type("name", "Yard before noon");
        browser.driver().executeScript("document.getElementById('day').value = '2027-03-14'");
        browser.press("Plan this round").picture("round-next-390");
        String round = browser.path();
        assertThat(browser.text()).contains("The round is planned.", "Next stop", "Key under the third drum.");

        browser.go("/").picture("round-home-390");
        assertThat(browser.text()).contains("Yours first", "Yard before noon", "0 done, 2 left");
        browser.press("Go on with this round").awaitPath(round);
        browser.press("Work on BF-04");
        answerAll();
        browser.type("instrument", "Tester 3");
        browser.press("Sign as Ilse Marrow");
        assertThat(browser.path()).startsWith("/records/");
        browser.go(round).picture("round-second-390");
        assertThat(browser.text()).contains("1 done, 1 left: about 35 min", "Work on BF-05", "signed by Ilse Marrow");
        browser.press("No access").press("Note it").awaitPath(round);
        assertThat(browser.text()).contains("Nobody could get in here before", "Nobody was there");
        browser.go(round + "/print").paper("round-pile");
    }

    private void answerAll() {
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
            String unit = field.findElement(By.xpath("following-sibling::span")).getText();
            field.clear();
            field.sendKeys(PASSING.get(unit));
        }
    }

    private void tap(WebElement target) {
        browser.driver().executeScript("arguments[0].scrollIntoView({block: 'center'})", target);
        browser.driver().executeScript("arguments[0].click()", target);
    }
}
