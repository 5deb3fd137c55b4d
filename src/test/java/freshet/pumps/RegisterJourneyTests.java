package freshet.pumps;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.results.Rule;
import com.deque.html.axecore.selenium.AxeBuilder;
import freshet.Browser;
import freshet.FreshetTest;
import freshet.measures.UnitSystem;
import freshet.people.People;
import freshet.people.Person;
import freshet.places.Places;
import freshet.places.PositionDraft;
import freshet.places.PositionKind;
import freshet.places.Site;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.support.ui.Select;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;

/** From an empty install to the first pump in its pit, on a phone; every page is looked at by a checker of accessibility. */
@FreshetTest
class RegisterJourneyTests {

    @LocalServerPort
    int port;

    @Autowired
    People people;

    @Autowired
    Places places;

    @Autowired
    Pumps pumps;

    private Browser browser;

    private void look(String name) {
        browser.picture(name + "-390");
        browser.phone();
        List<String> found = new AxeBuilder()
                .analyze(browser.driver()).getViolations().stream()
                        .map(Rule::toString)
                        .toList();
        assertThat(found).as(name).isEmpty();
        Number wider = (Number) browser.driver()
                .executeScript("return document.documentElement.scrollWidth - document.documentElement.clientWidth");
        assertThat(wider.intValue()).as(name + " needs no sideways scrolling").isZero();
        browser.desk().picture(name + "-1280");
        browser.phone();
    }

    private void choose(String id, String words) {
        new Select(browser.driver().findElement(By.id(id))).selectByVisibleText(words);
    }

    @Test
    void bringsTheFirstPumpIntoThePit() {
        Person me = people.welcomeFirstOwner("ilse", "Ilse Marrow", "river at thaw", UnitSystem.US);
        browser = Browser.at(port).signIn("ilse", "river at thaw");

        browser.go("/places/sites/new");
        look("places-site-new");
        browser.type("name", "Dyer Court").type("zone", "America/Chicago").type("windows[0].name", "Spring opening");
        choose("windows[0].kind", "Opening");
        browser.type("windows[0].fromDay", "31").type("windows[0].toDay", "20");
        choose("windows[0].fromMonth", "February");
        choose("windows[0].toMonth", "March");
        browser.press("Save");
        assertThat(browser.text()).contains("One thing to put right", "February has no day 31.");
        look("places-site-error");
        browser.type("windows[0].fromDay", "15").press("Save");
        assertThat(browser.text()).contains("Saved.", "Spring opening", "15 Feb to 20 Mar");
        Site site = places.siteNamed("Dyer Court").orElseThrow();
        places.addPosition(new PositionDraft(site.id(), "North pit", PositionKind.PIT, "Lid is heavy: two people"), me);
        browser.go("/places/sites/" + site.id());
        look("places-site");
        browser.go("/places");
        look("places");

        browser.go("/pumps/models/new");
        browser.type("name", "Utility 1/3 hp").type("powerW", "1/3");
        choose("kind", "Utility submersible");
        choose("drive", "Single-phase motor");
        String[] curve = {"0", "25", "15", "22", "28", "16", "2640", "0"};
        for (int i = 0; i < curve.length; i++) {
            browser.type("points[" + i / 2 + "]." + (i % 2 == 0 ? "flow" : "head"), curve[i]);
        }
        browser.press("Save");
        assertThat(browser.text()).contains("Does the sheet say gallons an hour?");
        look("pumps-model-doubt");
        browser.type("points[3].flow", "42").press("Save");
        assertThat(browser.text()).contains("Saved.", "42.0 gpm");
        look("pumps-model");
        browser.go("/pumps/models");
        look("pumps-models");

        browser.go("/pumps/new");
        browser.type("tag", "BF 07").type("place", "Dyer Court, North pit");
        choose("modelId", "Utility 1/3 hp");
        browser.press("Save");
        assertThat(browser.text()).contains("A tag has letters, digits and hyphens");
        look("pumps-unit-error");
        browser.type("tag", "BF-07").press("Save");
        Unit unit = pumps.unitTagged("BF-07").orElseThrow();
        assertThat(unit.stand().positionName()).isEqualTo("North pit");

        browser.go("/pumps/" + unit.id() + "/move");
        look("pumps-move");
        browser.go("/pumps/" + unit.id() + "/kit");
        look("pumps-kit");
        browser.go("/pumps/" + unit.id() + "/retire");
        look("pumps-retire");
    }
}
