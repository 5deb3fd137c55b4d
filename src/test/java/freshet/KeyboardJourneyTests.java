package freshet;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.board.Board;
import freshet.care.Care;
import freshet.care.CareYard;
import freshet.pumps.Unit;
import freshet.readings.MeterKind;
import freshet.readings.Readings;
import java.time.Duration;
import java.util.Map;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.support.ui.WebDriverWait;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;

/** The main job with the keyboard alone: no element is found for the hand, everything is reached by Tab and seen to have the focus. */
@FreshetTest
class KeyboardJourneyTests {

    private static final int FARTHEST = 400;
    private static final Map<String, String> PASSING = Map.of(
            "A", "4.5", "V", "118", "Ω", "0.2", "MΩ", ">200", "°F", "46", "°C", "8", "in", "0.02", "mm", "0.6", "s",
            "5");

    @LocalServerPort
    int port;

    @Autowired
    CareYard yard;

    @Autowired
    Care care;

    @Autowired
    Board board;

    @Autowired
    Readings readings;

    @Autowired
    TestClock clock;

    private Browser browser;

    @Test
    void findsReadsWorksAndSigns() {
        clock.set("2027-03-01T15:00:00Z");
        Unit unit = yard.unit("P-17");
        board.plan();
        browser = Browser.at(port).desk().go("/sign-in");
        yard.ilse();

        to("signInName");
        keys("ilse", Keys.TAB, "river at thaw", Keys.ENTER);
        browser.awaitPath("/");

        keys(Keys.TAB);
        assertThat(focused().getText()).isEqualTo("Skip to the page");
        assertSeen();
        to("find-tag");
        keys("p-17", Keys.ENTER);
        browser.awaitPath("/pumps/" + unit.id());

        toWords("Read the meter");
        keys(Keys.ENTER);
        browser.awaitPath("/pumps/" + unit.id() + "/reading");
        assertThat(focused().getDomAttribute("id"))
                .as("the digits go in at once")
                .isEqualTo("value");
        keys("12.5", Keys.ENTER);
        browser.awaitPath("/pumps/" + unit.id());
        assertThat(readings.log(unit.id(), MeterKind.RUN_HOURS).last().value()).isEqualByComparingTo("12.5");

        toWords("Opening 2027");
        keys(Keys.ENTER);
        answerEverything();
        assertThat(browser.path()).startsWith("/records/");
        assertThat(care.recordsOf(unit.id())).hasSize(1);
    }

    /** Tab by tab through the checklist: each tick by Space, the first choice of each group by Space, each number typed and once what it is measured with, then Enter on the last press. */
    private void answerEverything() {
        for (int step = 0; step < FARTHEST; step++) {
            keys(Keys.TAB);
            WebElement here = focused();
            String type = String.valueOf(here.getDomAttribute("type"));
            if (here.getTagName().equals("button") && here.getText().startsWith("Sign as")) {
                assertSeen();
                keys(Keys.ENTER);
                new WebDriverWait(browser.driver(), Duration.ofSeconds(10))
                        .until(chrome -> browser.path().startsWith("/records/"));
                return;
            }
            if (type.equals("checkbox") && inside(here, "fieldset.caution")
                    || type.equals("radio") && inside(here, ".check > .pick")) {
                keys(Keys.SPACE);
                while (focused().getDomAttribute("data-fails") != null) {
                    keys(Keys.ARROW_DOWN);
                }
            } else if ("instrument".equals(here.getDomAttribute("id"))) {
                keys("Tester 3");
            } else if (inside(here, ".check > .answer.with-unit")
                    && here.getTagName().equals("input")) {
                keys(passing(here));
            }
        }
        throw new AssertionError("the press that signs was not reached by the keyboard");
    }

    private static String passing(WebElement field) {
        String measure = field.findElement(By.xpath("following-sibling::span")).getText();
        return PASSING.getOrDefault(measure, "1");
    }

    private boolean inside(WebElement here, String selector) {
        return Boolean.TRUE.equals(
                browser.driver().executeScript("return arguments[0].closest(arguments[1]) !== null", here, selector));
    }

    private void to(String id) {
        tabUntil(id, here -> id.equals(here.getDomAttribute("id")));
    }

    private void toWords(String words) {
        tabUntil(
                words,
                here -> !here.getTagName().equals("body") && here.getText().contains(words));
    }

    private void tabUntil(String what, Predicate<WebElement> there) {
        for (int step = 0; step < FARTHEST; step++) {
            if (there.test(focused())) {
                assertSeen();
                return;
            }
            keys(Keys.TAB);
        }
        throw new AssertionError(what + " was not reached by the keyboard on " + browser.path());
    }

    /** Whoever looks sees where the keyboard is. */
    private void assertSeen() {
        Object outline = browser.driver().executeScript("""
                const style = getComputedStyle(document.activeElement);
                return style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 2""");
        assertThat(outline).as("the focus is seen on " + browser.path()).isEqualTo(true);
    }

    private WebElement focused() {
        return browser.driver().switchTo().activeElement();
    }

    private void keys(CharSequence... keys) {
        new Actions(browser.driver()).sendKeys(keys).perform();
    }
}
