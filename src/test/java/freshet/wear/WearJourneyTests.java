package freshet.wear;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.Browser;
import freshet.FreshetTest;
import freshet.TestClock;
import freshet.care.CareYard;
import freshet.pumps.PumpKind;
import freshet.pumps.Unit;
import java.time.Duration;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.support.ui.WebDriverWait;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;

@FreshetTest
class WearJourneyTests {

    @LocalServerPort
    int port;

    @Autowired
    CareYard yard;

    @Autowired
    WearYard past;

    @Autowired
    TestClock clock;

    Unit worn;

    @BeforeEach
    void aUnitThatWasRepairedAndWearsAgain() {
        clock.set("2026-03-14T15:00:00Z");
        worn = yard.unit("BF-07");
        past.readAndTest(worn, "2023-04-03", 12, 1);
        past.readAndTest(worn, "2023-09-20", 160, 0.90);
        long jam = past.found(worn, WearYard.noon("2023-10-02"), 3, "Impeller eaten by grit.");
        past.closed(jam, WearYard.noon("2023-10-20"), "New impeller and wear plate.");
        past.readAndTest(worn, "2023-10-21", 161, 0.985);
        past.readAndTest(worn, "2024-05-02", 240, 0.962);
        past.readAndTest(worn, "2024-10-11", 395, 0.925);
        past.readAndTest(worn, "2025-05-10", 450, 0.917);
        past.readAndTest(worn, "2025-10-14", 600, 0.868);
        past.test(worn, WearYard.noon("2026-03-12"), 0.86);
        past.read(worn, "2025-10-30", 604);
        for (int i = 1; i <= 3; i++) {
            Unit like = yard.unit("BF-1" + i);
            past.readAndTest(like, "2024-04-03", 10, 1);
            past.readAndTest(like, "2024-10-03", 210, 0.97 - 0.005 * i);
            past.readAndTest(like, "2025-10-03", 400, 0.93 - 0.01 * i);
        }
    }

    @Test
    void seesWhenAUnitComesToItsThreshold() {
        Browser browser = Browser.at(port).signIn("ilse", "river at thaw");
        browser.go("/pumps/" + worn.id()).picture("wear-saying-390").press("Its wear");
        assertThat(browser.path()).isEqualTo("/pumps/" + worn.id() + "/wear");
        browser.picture("wear-390").desk().go("/pumps/" + worn.id() + "/wear?threshold=80&robust=true");
        assertThat(browser.text()).contains("BF-07 is wearing", "Not before", "no meter reading near this day");
        browser.picture("wear-1280");
        print(browser, browser.path(), "wear-print");
        browser.go("/pumps/" + yard.unit("BF-12-NONE".substring(0, 5) + "X").id() + "/wear")
                .picture("wear-none-1280");
    }

    @Test
    void looksThroughTheFiguresOfTheFleet() {
        for (int i = 1; i <= 14; i++) {
            Unit unit = yard.unit(
                    "QM-%02d".formatted(i),
                    PumpKind.SUMP_WITH_FLOAT,
                    yard.brackenfold().id(),
                    CareYard.LONG_AGO);
            past.read(unit, "2022-03-%02d".formatted(i), i % 3 == 0 ? 90 : 1);
            past.read(unit, "2024-03-%02d".formatted(i), 200 + 37 * i);
            past.read(unit, "2026-03-%02d".formatted(Math.min(13, i)), 420 + 71 * i);
            if (i % 2 == 0) {
                long jam = past.found(unit, WearYard.noon("2023-0%d-05".formatted(1 + i % 9)), 3, "Jammed.");
                past.closed(jam, WearYard.noon("2023-0%d-09".formatted(1 + i % 9)), "Cleared.");
            }
            if (i % 4 == 0) {
                past.found(unit, WearYard.noon("2025-0%d-05".formatted(1 + i % 7)), 4, "Water in the winding.");
            }
        }
        Browser browser = Browser.at(port).signIn("ilse", "river at thaw").desk();
        browser.go("/pumps").press("Fleet figures");
        assertThat(browser.path()).isEqualTo("/fleet-figures");
        browser.type("age", "200").type("season", "150");
        workOut(browser, "season-part");
        browser.type("planned", "80").type("failure", "600");
        workOut(browser, "renewal-part");
        browser.type("units", "40").type("rate", "0.15").type("lead", "14").type("peak", "3");
        workOut(browser, "spares-part");
        browser.picture("figures-1280");
        String there = browser.path().replaceAll("#.*", "");
        print(browser, there, "figures-print");
        browser.phone().go(there).picture("figures-390");
        browser.desk()
                .go("/fleet-figures?model=%d&age=x&peak=&planned=5".formatted(yard.model(PumpKind.UTILITY_SUBMERSIBLE)))
                .picture("figures-none-1280");
    }

    private static void workOut(Browser browser, String part) {
        String before = browser.path();
        browser.driver()
                .findElement(By.cssSelector("section[aria-labelledby=" + part + "] button"))
                .click();
        new WebDriverWait(browser.driver(), Duration.ofSeconds(10))
                .until(chrome -> !browser.path().equals(before)
                        && "complete".equals(browser.driver().executeScript("return document.readyState")));
    }

    /** Keeps a picture of a page as it would go to paper. */
    private static void print(Browser browser, String path, String name) {
        browser.driver().executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", "print"));
        browser.size(740, 1000).go(path).picture(name);
        browser.driver().executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", ""));
        browser.desk();
    }
}
