package freshet.readings;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.Browser;
import freshet.FreshetTest;
import freshet.measures.UnitSystem;
import freshet.people.People;
import freshet.places.Places;
import freshet.pumps.Pumps;
import java.math.BigDecimal;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;

/** A technician in a cellar: reads the meter, then tests the flow, on a phone. */
@FreshetTest
class CellarJourneyTests {

    @LocalServerPort
    int port;

    @Autowired
    Readings readings;

    @Autowired
    People people;

    @Autowired
    Places places;

    @Autowired
    Pumps pumps;

    @Test
    void readsTheMeterAndTestsTheFlow() {
        Yard yard = new Yard(people, places, pumps, UnitSystem.US);
        long unit = yard.unit("BF-07").id();
        readings.recordReading(
                ReadingDraft.of(unit, MeterKind.RUN_HOURS, Instant.now().minusSeconds(90_000), new BigDecimal("412.6")),
                yard.me);

        Browser browser = Browser.at(port).signIn("ilse", Yard.PASSWORD).go("/pumps/" + unit + "/reading");
        browser.picture("reading-390").phone().type("value", "400").press("Write it down");
        assertThat(browser.text()).contains("400 is below the last reading, 412.6");
        browser.picture("reading-error-390").phone().type("value", "418.2").press("Write it down");
        assertThat(readings.log(unit, MeterKind.RUN_HOURS).lifetime()).isEqualByComparingTo("418.2");

        browser.go("/pumps/" + unit + "/readings").picture("readings-390").phone();
        browser.go("/pumps/" + unit + "/flow-test").picture("flow-test-390").phone();
        browser.type("container", "20").type("lap1", "60.1").type("lap2", "61").type("lap3", "1:0.5");
        browser.type("lift", "12").press("Add an adapter");
        browser.type("pieces[1].bore", "1 1/2").type("pieces[1].toBore", "1 1/4");
        browser.type("pieces[0].bore", "1.5").type("pieces[0].length", "30").press("Work it out");
        assertThat(browser.text()).contains("Pump or line?", "Where the head goes", "Total head");
        browser.picture("flow-test-worked-390")
                .desk()
                .picture("flow-test-worked-1280")
                .phone();
        browser.press("Keep this test");
        assertThat(browser.path()).startsWith("/flow-tests/");
        assertThat(browser.text()).contains("The test is kept.", "This is its first test");
        browser.picture("flow-test-kept-390").desk().picture("flow-test-kept-1280");
        assertThat(readings.capacity(unit)).isPresent();
    }
}
