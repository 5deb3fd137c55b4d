package freshet.overview;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.Browser;
import freshet.FreshetTest;
import freshet.TestClock;
import freshet.care.Care;
import freshet.care.CareYard;
import freshet.findings.FindingDraft;
import freshet.findings.Findings;
import freshet.pumps.PumpKind;
import freshet.pumps.Unit;
import freshet.readings.Readings;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.support.ui.WebDriverWait;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;

@FreshetTest
class OverviewJourneyTests {

    @LocalServerPort
    int port;

    @Autowired
    CareYard yard;

    @Autowired
    Readings readings;

    @Autowired
    Findings findings;

    @Autowired
    Care care;

    @Autowired
    TestClock clock;

    Unit weak;

    @BeforeEach
    void standInMarch() {
        clock.set("2026-03-14T15:00:00Z");
        yard.unit("BF-04");
        weak = yard.unit("BF-07");
        Unit nicked = yard.unit("BF-03");
        yard.unit("QM-104", PumpKind.SUMP_WITH_FLOAT, yard.brackenfold().id(), CareYard.LONG_AGO);
        readings.recordFlowTest(CareYard.flowTest(weak.id(), Instant.parse("2025-11-14T15:00:00Z"), 26), yard.ilse());
        readings.recordFlowTest(CareYard.flowTest(weak.id(), Instant.parse("2026-03-12T15:00:00Z"), 30.1), yard.ilse());
        findings.write(FindingDraft.about(nicked.id(), 4, "Cord nicked to the core."), yard.ilse());
    }

    @Test
    void answersWhatNeedsMeNowAndLeadsToTheUnit() {
        Browser browser =
                Browser.at(port).signIn("ilse", "river at thaw").go("/").picture("home-390");
        assertThat(browser.text()).contains("On the board", "BF-03", "Cord nicked to the core.", "not ready");
        browser.desk().go("/").picture("home-1280");
        browser.type("find-tag", "bf-07").press("Find");
        assertThat(browser.path()).isEqualTo("/pumps/" + weak.id());
        assertThat(browser.text()).contains("BF-07", "± ", "of reference", "2 tests", "Curve sheet", "History");
        browser.picture("unit-1280");
        browser.phone().go("/pumps/" + weak.id()).picture("unit-390");
        browser.go("/pumps").picture("fleet-390").desk().go("/pumps?sort=WORST").picture("fleet-1280");
        assertThat(browser.text()).contains("4 pumps", "not tested");
        siftsTheListWhileTyping(browser);
        browser.go("/season").picture("season-1280").phone().go("/season").picture("season-390");
        assertThat(browser.text()).contains("Brackenfold Pump Yard", "4 left");
    }

    /** With script the list follows the words, and the address with it; without, the button does the same. */
    private void siftsTheListWhileTyping(Browser browser) {
        browser.type("text", "bf-07");
        new WebDriverWait(browser.driver(), Duration.ofSeconds(10))
                .until(chrome ->
                        chrome.findElements(By.cssSelector("#found tbody tr")).size() == 1);
        assertThat(browser.driver().findElement(By.id("found")).getText()).contains("BF-07", "1 to 1 of 1");
        assertThat(browser.path()).contains("text=bf-07");
    }
}
