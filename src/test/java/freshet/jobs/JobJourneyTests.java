package freshet.jobs;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.Browser;
import freshet.FreshetTest;
import freshet.TestClock;
import freshet.measures.UnitSystem;
import freshet.people.People;
import freshet.places.Places;
import freshet.pumps.Pumps;
import freshet.readings.Readings;
import java.time.Instant;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;

@FreshetTest
class JobJourneyTests {

    private static final Instant MARCH = Instant.parse("2026-03-12T15:00:00Z");

    @LocalServerPort
    int port;

    @Autowired
    People people;

    @Autowired
    Places places;

    @Autowired
    Pumps pumps;

    @Autowired
    Readings readings;

    @Autowired
    TestClock clock;

    @BeforeEach
    void standInMarch() {
        clock.set("2026-03-14T19:40:00Z");
        JobYard yard = new JobYard(people, places, pumps, readings, UnitSystem.US);
        yard.worn("BF-07", 0.84, MARCH);
        yard.worn("BF-04", 0.97, MARCH);
        yard.worn("BF-05", 0.92, MARCH);
        yard.unit("BF-02", yard.thirdHorse());
        yard.unit("BF-17", yard.trash());
    }

    @Test
    void answersACallerAtTheCounter() {
        Browser browser = Browser.at(port)
                .signIn("ilse", JobYard.PASSWORD)
                .go("/jobs")
                .picture("jobs-390")
                .press("New job sheet");
        browser.picture("job-blank-390");
        browser.type("flow", "20").type("lift", "12").type("unit", "bf-07");
        browser.press("Add an adapter");
        assertThat(browser.text()).contains("2. Adapter");
        browser.type("pieces[0].bore", "1 1/2").type("pieces[0].length", "8");
        browser.type("pieces[1].bore", "1 1/2").type("pieces[1].toBore", "3/4").press("Add a hose");
        browser.type("pieces[2].bore", "3/4").type("pieces[2].length", "80").press("Work it out");
        assertThat(browser.driver().findElement(By.tagName("h1")).getText()).contains("The job needs 20.0");
        assertThat(browser.text()).contains("Not enough", "BF-04", "BF-02", "not enough even when new");
        browser.picture("job-390").desk().picture("job-1280");
        String job = browser.path();
        browser.go(job).paper("job");
        browser.go("/jobs/sheet?press=work&unit=BF-04&lift=12&volume=7480&area=1000&hours=8&inflow=3&cord=AWG_16"
                        + "&cordLength=150&solids=3/8&pieces%5B0%5D.piece=LAY_FLAT_HOSE&pieces%5B0%5D.bore=1.5&pieces%5B0%5D.length=50"
                        + "&pieces%5B1%5D.piece=SWING_CHECK&pieces%5B1%5D.bore=1.5")
                .picture("job-all-1280")
                .paper("job-all");
        String any = "/jobs/sheet?press=work&flow=20&lift=12&pieces%5B0%5D.bore=1.5&pieces%5B0%5D.length=80";
        browser.go(any)
                .picture("job-units-1280")
                .phone()
                .go(any)
                .picture("job-units-390")
                .desk();
        browser.go("/jobs/sheet?press=work&flow=2,5&unit=XX-1").picture("job-wrong-1280");
    }

    @Test
    void tellsThePumpFromTheLine() {
        Browser browser =
                Browser.at(port).signIn("ilse", JobYard.PASSWORD).go("/jobs").press("Look at a weak pump");
        browser.picture("split-blank-390");
        browser.type("unit", "BF-02").type("lift", "12").type("flow", "11").type("amps", "4.4");
        browser.type("pieces[0].bore", "1").type("pieces[0].length", "80").press("Work it out");
        assertThat(browser.driver().findElement(By.tagName("h1")).getText()).isEqualTo("Mostly the line");
        String path = browser.path();
        browser.picture("split-390").desk().go(path).picture("split-1280").paper("split");
        browser.go(path.replace("gauge=", "gauge=9.5")
                        .replace("gaugeHeight=", "gaugeHeight=1")
                        .replace("gaugeBore=", "gaugeBore=1.5"))
                .picture("split-gauge-1280");
    }
}
