package freshet.readings;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.Pages;
import freshet.Pages.Page;
import freshet.TestClock;
import freshet.measures.UnitSystem;
import freshet.people.People;
import freshet.places.Places;
import freshet.pumps.CurvePoint;
import freshet.pumps.KitItem;
import freshet.pumps.KitKind;
import freshet.pumps.Pumps;
import freshet.pumps.Ratings;
import freshet.pumps.Unit;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

@FreshetTest
class FlowTestPagesTests {

    private static final double FT = 0.3048;
    private static final double GPM = 0.2271247070;

    /** 25 ft shut off, 42 gpm open. */
    private static final List<CurvePoint> THIRD_HORSE = List.of(
            new CurvePoint(0, 25 * FT),
            new CurvePoint(15 * GPM, 22 * FT),
            new CurvePoint(28 * GPM, 16 * FT),
            new CurvePoint(37 * GPM, 8 * FT),
            new CurvePoint(42 * GPM, 0));

    /** 20 gal in 115.6 s, 12 ft of lift, 80 ft of 1 in hose behind a reducing adapter. */
    private static final String[] HIRERS_HOSE = {
        "at",
        "2026-03-14T14:02",
        "container",
        "20",
        "lap1",
        "115.0",
        "lap2",
        "117.1",
        "lap3",
        "1:55.6",
        "lap4",
        "1:53.9",
        "lap5",
        "116.2",
        "lift",
        "12",
        "pieces[0].piece",
        "ADAPTER",
        "pieces[0].bore",
        "1½",
        "pieces[0].toBore",
        "1",
        "pieces[0].k",
        "0.5",
        "pieces[1].piece",
        "SMOOTH_HOSE",
        "pieces[1].bore",
        "1 in",
        "pieces[1].length",
        "80 ft",
        "pieces[1].c",
        "140",
        "water",
        "44",
        "volts",
        "117",
        "amps",
        "4.4"
    };

    @Autowired
    MockMvc mvc;

    @Autowired
    Readings readings;

    @Autowired
    People people;

    @Autowired
    Places places;

    @Autowired
    Pumps pumps;

    @Autowired
    TestClock clock;

    Yard yard;
    long unit;
    String address;
    Pages pages;

    @BeforeEach
    void signIn() {
        clock.set("2026-03-14T19:02:30Z");
        yard = new Yard(people, places, pumps, UnitSystem.US);
        unit = yard.unit("BF-07", yard.model("Third-horse", 0.05, Ratings.NONE, THIRD_HORSE))
                .id();
        address = "/pumps/" + unit + "/flow-test";
        pages = Pages.signedIn(mvc, "ilse", Yard.PASSWORD);
    }

    private Page submit(String... changes) {
        List<String> all = new ArrayList<>(List.of(HIRERS_HOSE));
        for (int i = 0; i < changes.length; i += 2) {
            int there = all.indexOf(changes[i]);
            if (there >= 0) {
                all.set(there + 1, changes[i + 1]);
            } else {
                all.addAll(List.of(changes[i], changes[i + 1]));
            }
        }
        return pages.submit(address, all.toArray(String[]::new));
    }

    @Test
    void asksAboutAHoseOfMilesAndATenthOfTheFlowAndTakesAYes() {
        Page asked = submit("press", "work", "pieces[1].length", "8000", "water", "44 c");
        assertThat(asked.status()).isEqualTo(422);
        assertThat(asked.wrong("pieces[1].length")).contains("Is 8,000 ft so?", "If 8000 cm was meant");
        assertThat(asked.value("pieces[1].length")).isEqualTo("8000");
        assertThat(asked.html().select("[name=asked]").eachAttr("value")).containsExactly("pieces[1].length=8000");

        Page little = submit("press", "keep", "container", "0.5");
        assertThat(little.wrong("container")).contains("A new pump of this model gives");
        Page kept = submit("pressed", "keep", "container", "0.5", "asked", "container=0.5", "itIsSo", "asked");
        assertThat(kept.location()).startsWith("/flow-tests/");
    }

    @Test
    void showsAnotherUnitInThePersonsOwn() {
        Page page = submit("press", "work", "lift", "3.6576 m");
        assertThat(page.html().select("#lift").parents().get(1).text()).contains("= 12.0 ft");
    }

    @Test
    void asksWithTheKitOfTheUnitInItsOwnUnits() {
        Unit bare = pumps.unit(unit);
        pumps.changeKit(
                unit,
                bare.version(),
                List.of(
                        new KitItem(KitKind.ADAPTER, "1½ to 1", 38.1, 25.4, null, 1),
                        new KitItem(KitKind.CORD, "Cord", null, null, 7.6, 1),
                        new KitItem(KitKind.HOSE, "Garden hose", 25.4, null, 24.384, 1)),
                yard.me);
        Page page = pages.open(address);

        assertThat(page.status()).isEqualTo(200);
        assertThat(page.text("h1")).isEqualTo("Flow test of BF-07");
        assertThat(page.text(".caution")).contains("Unplug before hands go in", "Never lift it by its cord");
        assertThat(page.html().select(".piece")).hasSize(2);
        assertThat(page.value("pieces[0].toBore")).isEqualTo("1");
        assertThat(page.value("pieces[1].length")).isEqualTo("80");
        assertThat(page.html().select("[name=\"pieces[1].piece\"] [selected]").val())
                .isEqualTo("SMOOTH_HOSE");
        assertThat(page.value("at")).isEqualTo("2026-03-14T14:02");
        assertThat(page.html().select(".result")).isEmpty();
        // Enter works it out, it does not take a piece out
        assertThat(page.html().select("#flow-test button").first().val()).isEqualTo("work");
    }

    @Test
    void worksATestOutBesideTheFormWithoutKeepingIt() {
        Page page = submit("press", "work");

        assertThat(page.status()).isEqualTo(200);
        assertThat(page.text(".verdict-word")).isEqualTo("Mostly the line");
        assertThat(page.text(".result")).contains("Through this line even a new pump would give 12");
        assertThat(page.text(".figure-word")).matches("8\\d.% ± \\d+.% of reference head at 10\\.4.gpm");
        assertThat(page.text(".result")).contains("Spread 2.8 %", "not from a gauge");
        assertThat(page.html().select(".parts-bar rect")).hasSize(7);
        assertThat(page.text("tfoot")).contains("Total head");
        assertThat(page.value("lap3")).isEqualTo("1:55.6");
        assertThat(page.value("pieces[0].bore")).isEqualTo("1½");
        assertThat(page.html().select(".result button").attr("form")).isEqualTo("flow-test");
        assertThat(readings.flowTests(unit)).isEmpty();
    }

    @Test
    void keepsATestOnceAndShowsIt() {
        Page kept = submit("press", "keep", "rig", "Hirer’s hose", "note", "cold");
        assertThat(kept.location()).startsWith("/flow-tests/");
        assertThat(submit("press", "keep", "rig", "Hirer’s hose", "note", "cold")
                        .location())
                .isEqualTo(kept.location());
        assertThat(readings.flowTests(unit)).singleElement().satisfies(test -> {
            assertThat(test.facts().seconds()).containsExactly(115.0, 117.1, 115.6, 113.9, 116.2);
            assertThat(test.facts().pieces()).hasSize(3);
            assertThat(test.facts().pieces().get(1).innerDiameterMm()).isEqualTo(25.4);
            assertThat(test.facts().pieces().get(2).hazenWilliamsC()).isEqualTo(140);
        });

        Page page = pages.open(kept.location());
        assertThat(page.text("main"))
                .contains(
                        "This is its first test",
                        "Ilse Marrow",
                        "14 Mar 2026, 14:02",
                        "20.0 gal",
                        "RIG".substring(0, 0))
                .contains("Smooth hose", "C 140", "Hirer’s hose", "cold", "44 °F", "Mostly the line");
        // the next blank form has the same rig, and its test is on the same rig
        Page next = pages.open(address);
        assertThat(next.value("rig")).isEqualTo("Hirer’s hose");
        assertThat(next.value("container")).isEqualTo("20");
        assertThat(next.html().select(".piece")).hasSize(2);
        assertThat(next.value("pieces[0].bore")).isEqualTo("1.5");
        assertThat(next.value("pieces[1].c")).isEqualTo("140.0");
        assertThat(next.value("lap1")).isEmpty();
    }

    @Test
    void addsAndTakesOutPiecesWithoutLosingWhatWasTyped() {
        Page more = submit("press", "add-FITTING");
        assertThat(more.status()).isEqualTo(200);
        assertThat(more.html().select(".piece")).hasSize(3);
        assertThat(more.html().select("[name=\"pieces[2].piece\"] option").eachText())
                .contains("Elbow, 90°")
                .doesNotContain("Smooth hose");
        assertThat(more.value("lap2")).isEqualTo("117.1");
        Page less = submit("press", "out-0");
        assertThat(less.html().select(".piece")).hasSize(1);
        assertThat(less.value("pieces[0].length")).isEqualTo("80 ft");
        Page full = submit(
                "press",
                "add-HOSE",
                "pieces[2].bore",
                "",
                "pieces[3].bore",
                "",
                "pieces[4].bore",
                "",
                "pieces[5].bore",
                "",
                "pieces[6].bore",
                "",
                "pieces[7].bore",
                "",
                "pieces[8].bore",
                "");
        assertThat(full.html().select(".piece")).hasSize(8);
        assertThat(full.html().select("button[value^=add-]")).isEmpty();
    }

    @Test
    void saysAllThatIsWrongAtOnceAndKeepsIt() {
        Page page = submit("lap4", "1:5o", "lift", "", "pieces[1].bore", "12 psi", "pieces[1].roughness", "0.1 mm");

        assertThat(page.status()).isEqualTo(422);
        assertThat(page.html().title()).startsWith("Error: Flow test of BF-07");
        assertThat(page.text(".wrongs h2")).isEqualTo("4 things to put right");
        assertThat(page.wrong("lap4")).startsWith("\"1:5o\" is not a time.");
        assertThat(page.value("lap4")).isEqualTo("1:5o");
        assertThat(page.wrong("lift")).startsWith("The lift is missing.");
        assertThat(page.wrong("pieces[1].bore")).contains("psi");
        assertThat(page.wrong("pieces[1].c")).isEqualTo("Give C or the roughness, not both.");
        assertThat(page.html().select(".wrongs a").eachAttr("href"))
                .contains("#lap4", "#lift", "#pieces[1].bore", "#pieces[1].c");
        assertThat(page.html().select("[id=\"pieces[1].bore\"]")).hasSize(1);
        assertThat(page.html().select(".result")).isEmpty();
    }

    @Test
    void asksAboutGallonsAnHour() {
        Page page = submit("meterFlow", "624", "press", "keep");
        assertThat(page.status()).isEqualTo(422);
        assertThat(page.wrong("meterFlow").replace('\u00a0', ' '))
                .isEqualTo("624.0 gpm is more than this pump can give: 42.0 gpm, and 15 % over. Did you read gph?"
                        + " 624 gph is 10.4 gpm.");
        assertThat(readings.flowTests(unit)).isEmpty();
        assertThat(submit("meterFlow", "624 gph", "press", "keep").status()).isEqualTo(302);
    }

    @Test
    void saysWhichWayAHeadIsOffTheCurve() {
        assertThat(submit("lift", "30").wrong("lift").replace('\u00a0', ' '))
                .startsWith("The total head comes to 37")
                .contains("ends at 25.0 ft with no flow");
        assertThat(submit("lift", "-20").wrong("lift")).startsWith("The total head comes to only");
        assertThat(submit("lift", "30 psi").status()).isEqualTo(422);
    }

    @Test
    void readsTheHeadFromAGaugeWhenThereIsOne() {
        Page wrong = submit("lift", "", "gauge", "8.2");
        assertThat(wrong.wrong("gaugeHeight")).startsWith("Measure how high the gauge stands");
        assertThat(wrong.wrong("lift")).isEmpty();
        assertThat(wrong.html().select("details[open] #gauge")).hasSize(1);
        Page page = submit("lift", "", "gauge", "8.2", "gaugeHeight", "0.5", "gaugeBore", "1 1/2");
        assertThat(page.status()).isEqualTo(200);
        assertThat(page.text(".result")).contains("by the gauge").doesNotContain("not from a gauge");
        assertThat(page.html().select(".parts-bar")).isEmpty();
    }

    @Test
    void readsMetricForWhoeverReadsMetric() {
        people.readIn(yard.me.id(), UnitSystem.SI);
        Page page = pages.submit(
                address,
                "container",
                "75.7",
                "lap1",
                "115",
                "lap2",
                "116",
                "lap3",
                "115.5",
                "lift",
                "3.66",
                "pieces[0].piece",
                "SMOOTH_HOSE",
                "pieces[0].bore",
                "25.4",
                "pieces[0].length",
                "24.4",
                "water",
                "7");
        assertThat(page.status()).isEqualTo(200);
        assertThat(page.text(".result").replace('\u00a0', ' ')).contains("2.36 m³/h", "3.66 m");
    }

    @Test
    void takesATestBackWithItsReason() {
        String kept = submit("press", "keep").location();
        Page wrong = pages.submit(kept + "/withdraw", "why", " ");
        assertThat(wrong.status()).isEqualTo(422);
        assertThat(wrong.wrong("why")).isEqualTo("Say why.");
        assertThat(wrong.html().select("details[open]")).hasSize(1);

        assertThat(pages.submit(kept + "/withdraw", "why", "kinked hose").location())
                .isEqualTo(kept);
        Page page = pages.open(kept);
        assertThat(page.text(".warn")).contains("Taken back 14 Mar 2026, 14:02 by Ilse Marrow: kinked hose");
        assertThat(page.html().select("form[action$=withdraw]")).isEmpty();
        assertThat(readings.capacity(unit)).isEmpty();
    }

    @Test
    void knowsNoPagesOfWhatIsNotThere() {
        assertThat(pages.open("/pumps/999999/flow-test").status()).isEqualTo(404);
        assertThat(pages.open("/flow-tests/999999").status()).isEqualTo(404);
        assertThat(pages.submit("/flow-tests/999999/withdraw", "why", "x").status())
                .isEqualTo(404);
        assertThat(pages.open("/flow-tests/first").status()).isEqualTo(404);
    }
}
