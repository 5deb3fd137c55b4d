package freshet.jobs;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.Pages;
import freshet.Pages.Page;
import freshet.TestClock;
import freshet.measures.UnitSystem;
import freshet.people.People;
import freshet.places.Places;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import freshet.readings.Readings;
import java.time.Instant;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

@FreshetTest
class PumpOrLinePagesTests {

    private static final String LINE = "/jobs/pump-or-line?press=work&units=US&lift=12&pieces[0].piece=SMOOTH_HOSE"
            + "&pieces[0].length=80&pieces[0].c=140&pieces[0].bore=";
    private static final Instant MARCH = Instant.parse("2026-03-12T15:00:00Z");

    @Autowired
    MockMvc mvc;

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

    JobYard yard;
    Pages pages;

    @BeforeEach
    void standInMarch() {
        clock.set("2026-03-14T19:40:00Z");
        yard = new JobYard(people, places, pumps, readings, UnitSystem.US);
        pages = Pages.signedIn(mvc, "ilse", JobYard.PASSWORD);
        yard.unit("BF-02", yard.thirdHorse());
    }

    /** A new pump gives 13 gpm through 1 in and 25.7 gpm through 1 1/2 in; bare at 12 ft it gives 33.2 gpm. */
    @ParameterizedTest
    @CsvSource({
        "1, 12.5, Mostly the line",
        "1.5, 9, Mostly the pump",
        "1.5, 17, 'Both, pump and line'",
        "1.5, 33, More than a new pump gives"
    })
    void dividesWhatIsMissing(String bore, String flow, String verdict) {
        Page page = pages.open(LINE + bore + "&unit=BF-02&flow=" + flow);
        assertThat(page.status()).isEqualTo(200);
        assertThat(page.text("h1")).isEqualTo(verdict);
    }

    @Test
    void saysWhatWearTakesWithItsDoubtAndWhatCannotBeTold() {
        Page worn = pages.open(LINE + "1.5&unit=BF-02&flow=17");
        assertThat(worn.text("section:has(#told)"))
                .contains("The line takes 7.5 gpm of the 33.2 gpm that a new pump gives")
                .containsPattern("Wear, or something hidden in the line, takes 8\\.\\d ± [1-3]\\.\\d gpm");
        assertThat(worn.text("section:has(#untold)"))
                .contains("without a gauge at the pump the two look alike", "nobody read the amps");
        Page within = pages.open(LINE + "1&unit=BF-02&flow=12.5");
        assertThat(within.text("section:has(#told)")).contains("cannot be told from no wear");
        assertThat(within.text(".lead")).contains("Change the hose before you open the pump.");
        assertThat(within.html().select(".parts-bar")).hasSize(2);
        assertThat(within.text(".sheet table")).contains("Arrives 12.5 gpm", "A new pump, without the line 33.2 gpm");
    }

    @Test
    void tellsAKinkFromWearByTheGauge() {
        // 11 gpm come where a new pump gives 25.7, at the full 23 ft that its curve has there: it is held up, not worn
        Page kink = pages.open(LINE + "1.5&unit=BF-02&flow=11&amps=4.4&gauge=9.95&gaugeHeight=0&gaugeBore=1.5");
        assertThat(kink.text("h1")).isEqualTo("Mostly the line");
        assertThat(kink.text("section:has(#told)"))
                .contains("more than the lift and these pieces take: a kink", "cannot be told from no wear");
        assertThat(kink.text("section:has(#untold)")).doesNotContain("without a gauge");
        assertThat(kink.html().select("tr.fits th .word").eachText())
                .containsExactly("Something in the way, after the gauge fits");
        // 17 gpm at the 14 ft that lift and hose take there, where its curve has 21 ft: it is worn
        Page worn = pages.open(LINE + "1.5&unit=BF-02&flow=17&amps=3.5&gauge=6.1&gaugeHeight=0&gaugeBore=1.5");
        assertThat(worn.text("section:has(#told)")).contains("nothing is hidden in it", "Wear takes");
        assertThat(worn.html().select("tr.fits")).hasSize(2);
        assertThat(worn.text("tr.fits")).contains("Weak pump");
    }

    @Test
    void takesWhatSomebodySawOverTheNumbers() {
        Page page = pages.open(LINE + "1.5&unit=BF-02&flow=5&headReads=UNSTEADY&flowReads=UNSTEADY&ampsReads=UNSTEADY");
        assertThat(page.html().select("tr.fits th").eachText()).containsExactly("Swings fits");
        assertThat(pages.open(LINE + "1.5&unit=BF-02&flow=5&headReads=nonsense").status())
                .isEqualTo(200);
    }

    @Test
    void beginsWithAKeptFlowTest() {
        Unit unit = yard.unit("BF-09", yard.thirdHorse());
        long test = yard.test(unit, 22, 16, MARCH);
        Page page = pages.open("/jobs/pump-or-line?test=" + test);
        assertThat(page.status()).isEqualTo(200);
        assertThat(page.value("unit")).isEqualTo("BF-09");
        assertThat(page.value("lift")).isEqualTo("16");
        assertThat(page.value("amps")).isEqualTo("4.4");
        assertThat(page.text("h1")).isEqualTo("Mostly the pump");
        assertThat(pages.open("/jobs/pump-or-line?test=999999").status()).isEqualTo(404);
        assertThat(pages.open("/jobs/pump-or-line?test=abc").status()).isEqualTo(404);
        assertThat(pages.open("/flow-tests/" + test).html().select("main a[href=/jobs/pump-or-line?test=" + test + "]"))
                .hasSize(1);
    }

    @Test
    void leadsFromTheUnitToBothPages() {
        Page page = pages.open("/find?tag=BF-02");
        Page unit = pages.open(String.valueOf(page.location()));
        assertThat(unit.html()
                        .select("main a[href=/jobs/sheet?unit=BF-02], main a[href=/jobs/pump-or-line?unit=BF-02]"))
                .hasSize(2);
        assertThat(unit.html().select("nav.ways a[href=/jobs]")).hasSize(1);
        assertThat(pages.open("/jobs").html().select("main a[href=/jobs/sheet], main a[href=/jobs/pump-or-line]"))
                .hasSize(2);
    }

    @Test
    void putsTheCautionBeforeWhatHandsAreToDo() {
        Page page = pages.open("/jobs/pump-or-line");
        assertThat(page.status()).isEqualTo(200);
        assertThat(page.html().select(".wrongs")).isEmpty();
        assertThat(page.html()
                        .select("section.caution ~ section:has(#patterns), section.caution ~ section:has(#diagnosis)"))
                .hasSize(2);
        assertThat(page.text(".caution")).contains("Unplug, and keep the plug in your own hand");
        assertThat(page.html().select("section:has(#patterns) tbody tr")).hasSize(10);
        assertThat(page.html().select("section:has(#diagnosis) tbody tr")).hasSize(12);
        assertThat(page.text()).doesNotContain("??");
    }

    @Test
    void keepsWhatWasTypedAndSaysEachWrongAtItsField() {
        Page page = pages.open("/jobs/pump-or-line?press=work&lift=12 gpm&flow=&unit=<script>&flowDoubt=500&gauge=10"
                + "&pieces[0].bore=&pieces[0].length=80");
        assertThat(page.status()).isEqualTo(422);
        assertThat(page.wrong("lift")).contains("not a unit for this");
        assertThat(page.value("lift")).isEqualTo("12 gpm");
        assertThat(page.wrong("flow")).contains("Type the flow");
        assertThat(page.wrong("unit")).contains("No unit has the tag \"<script>\"");
        assertThat(page.wrong("flowDoubt")).isNotEmpty();
        assertThat(page.wrong("gaugeHeight")).isNotEmpty();
        assertThat(page.wrong("pieces[0].bore")).isNotEmpty();
        assertThat(page.html().select("main script")).isEmpty();
        assertThat(pages.open(LINE + "1&flow=10").wrong("unit")).contains("Name the unit");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "flow=1e308",
                "flow=0",
                "flow=-1",
                "flow=999999",
                "gauge=1e9",
                "amps=-1",
                "outlet=0",
                "model=9999",
                "water=-40"
            })
    void refusesWhatCannotBeWithoutFailing(String bad) {
        String rest = (bad.startsWith("flow=") ? "" : "&flow=10") + (bad.startsWith("model=") ? "" : "&unit=BF-02");
        assertThat(pages.open(LINE + "1&" + bad + rest).status()).isEqualTo(422);
    }

    @Test
    void asksWhetherGallonsAnHourWereMeasuredAndTakesAYesOfOnePress() {
        Page asked = pages.open(LINE + "1&unit=BF-02&flow=600");
        assertThat(asked.status()).isEqualTo(422);
        assertThat(asked.wrong("flow")).contains("Is 600.0 gpm so?", "If 600 gph was meant, which is 10.0 gpm");
        assertThat(asked.value("flow")).isEqualTo("600");
        assertThat(asked.html().select("[name=asked]").eachAttr("value")).containsExactly("flow=600");
        assertThat(asked.html().select("[name=pressed]").val()).isEqualTo("work");

        String yes = LINE.replace("press=work", "pressed=work") + "1&unit=BF-02&flow=600&asked=flow=600&itIsSo=asked";
        Page page = pages.open(yes);
        assertThat(page.status()).isEqualTo(200);
        assertThat(page.html().select("[name=itIsSo]").eachAttr("value")).containsExactly("flow=600");
        assertThat(pages.open(yes.replace("unit=BF-02&flow=600", "unit=BF-02&flow=700"))
                        .status())
                .isEqualTo(422);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "flow=0.001&gauge=500&gaugeHeight=0&gaugeBore=1",
                "flow=10&lift=40",
                "flow=300",
                "flow=10&gauge=-10&gaugeHeight=0&gaugeBore=1",
                "flow=10&flowDoubt=0&outlet=0.5",
                "flow=10&amps=0"
            })
    void answersOddNumbersWithoutFailing(String odd) {
        String address = odd.contains("lift=") ? LINE.replace("lift=12&", "") : LINE;
        address += "1&unit=BF-02&" + odd;
        Page asked = pages.open(address);
        if (asked.status() == 422) {
            for (String tick : asked.html().select("[name=asked]").eachAttr("value")) {
                address += "&itIsSo=" + tick;
            }
        }
        assertThat(pages.open(address).status()).isEqualTo(200);
    }
}
