package freshet.readings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import freshet.Browser;
import freshet.FreshetTest;
import freshet.measures.UnitSystem;
import freshet.people.People;
import freshet.places.Places;
import freshet.pumps.Pumps;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.WebDriverWait;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;

/** The stopwatch in the form of a flow test, pressed on a phone. */
@FreshetTest
class StopwatchJourneyTests {

    @LocalServerPort
    int port;

    @Autowired
    People people;

    @Autowired
    Places places;

    @Autowired
    Pumps pumps;

    Browser browser;
    String address;

    @BeforeEach
    void openTheForm() {
        Yard yard = new Yard(people, places, pumps, UnitSystem.US);
        address = "/pumps/" + yard.unit("BF-07").id() + "/flow-test";
        browser = Browser.at(port).signIn("ilse", Yard.PASSWORD).go(address);
    }

    @AfterEach
    void letScriptsRun() {
        browser.driver().executeCdpCommand("Emulation.setScriptExecutionDisabled", Map.of("value", false));
        browser.driver().executeScript("localStorage.clear()");
    }

    private WebElement press(String which) {
        return browser.driver().findElement(By.cssSelector("#stopwatch [data-press=" + which + "]"));
    }

    /** Presses at once, and says when by the browser's clock. */
    private double pressed(String which) {
        browser.driver().executeScript("arguments[0].scrollIntoView({block: 'center'})", press(which));
        double before = now();
        press(which).click();
        return (before + now()) / 2;
    }

    private double now() {
        return ((Number) browser.driver().executeScript("return performance.now()")).doubleValue();
    }

    private String field(int lap) {
        return browser.driver().findElement(By.id("lap" + lap)).getDomProperty("value");
    }

    private static void pass(long milliseconds) {
        try {
            Thread.sleep(milliseconds);
        } catch (InterruptedException stopped) {
            throw new IllegalStateException(stopped);
        }
    }

    @Test
    void timesTwoLapsIntoTheNextEmptyFields() {
        browser.type("lap1", "60.1");
        assertThat(List.of("start", "lap", "stop")).allSatisfy(which -> {
            assertThat(press(which).getRect().getHeight()).isGreaterThanOrEqualTo(48);
            assertThat(press(which).getRect().getWidth()).isGreaterThanOrEqualTo(48);
        });
        assertThat(press("lap").isEnabled()).isFalse();
        double start = pressed("start");
        pass(1_500);
        double first = pressed("lap");
        assertThat(browser.text()).contains("Written down: Time 2 " + field(2) + " s");
        pass(1_200);
        double second = pressed("stop");

        assertThat(field(1)).isEqualTo("60.1");
        assertThat(Double.parseDouble(field(2))).isCloseTo((first - start) / 1000, within(0.4));
        assertThat(Double.parseDouble(field(3))).isCloseTo((second - first) / 1000, within(0.4));
        assertThat(field(2)).matches("\\d+\\.\\d");
        assertThat(field(4)).isEmpty();
        assertThat(press("start").isEnabled()).isTrue();
        browser.picture("stopwatch-390").phone();

        browser.type("container", "0.45").type("lift", "12").type("lap1", "");
        browser.type("pieces[0].bore", "1.5").type("pieces[0].length", "30").press("Work it out");
        assertThat(browser.text()).contains("The container filled in less than 10 s");
    }

    @Test
    void endsWithoutATimeWhenStopFollowsTheLastLapAtOnceAndWhenTheFieldsAreFull() {
        pressed("start");
        pass(300);
        browser.driver()
                .executeScript("document.querySelector('[data-press=lap]').click();"
                        + "document.querySelector('[data-press=stop]').click()");
        assertThat(field(1)).isNotEmpty();
        assertThat(field(2)).isEmpty();
        for (int lap = 1; lap <= 4; lap++) {
            browser.type("lap" + lap, "60");
        }
        pressed("start");
        pass(300);
        pressed("lap");
        assertThat(field(5)).isNotEmpty();
        assertThat(press("lap").isEnabled()).isFalse();
        pressed("start");
        assertThat(browser.text()).contains("All fields are full. Empty one to time again.");
    }

    @Test
    void remembersThatItShallBeep() {
        assertThat(beep().isSelected()).isFalse();
        browser.driver().findElement(By.cssSelector("[data-setting=beep]")).click();
        browser.go(address);
        assertThat(beep().isSelected()).isTrue();
    }

    private WebElement beep() {
        return browser.driver().findElement(By.cssSelector("[data-setting=beep] input"));
    }

    @Test
    void isNotThereWithoutScriptAndTheFormWorks() {
        browser.driver().executeCdpCommand("Emulation.setScriptExecutionDisabled", Map.of("value", true));
        browser.go(address);
        assertThat(browser.driver().findElement(By.id("stopwatch")).isDisplayed())
                .isFalse();
        browser.type("lap1", "60.1");
        browser.driver()
                .findElement(By.xpath("//main//button[normalize-space(.)='Work it out']"))
                .click();
        // the answer's page takes the place of this one while we look
        new WebDriverWait(browser.driver(), Duration.ofSeconds(10))
                .ignoring(StaleElementReferenceException.class)
                .until(chrome ->
                        chrome.findElement(By.tagName("main")).getText().contains("Type how much the container holds"));
    }
}
