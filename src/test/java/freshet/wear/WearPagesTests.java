package freshet.wear;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.Pages;
import freshet.Pages.Page;
import freshet.TestClock;
import freshet.care.CareYard;
import freshet.pumps.CurvePoint;
import freshet.pumps.ModelDraft;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

@FreshetTest
class WearPagesTests {

    @Autowired
    MockMvc mvc;

    @Autowired
    CareYard yard;

    @Autowired
    WearYard past;

    @Autowired
    Pumps pumps;

    @Autowired
    TestClock clock;

    Unit unit;
    Pages ilse;

    @BeforeEach
    void aUnit() {
        clock.set("2026-03-14T15:00:00Z");
        unit = yard.unit("BF-07");
        yard.ilse();
        ilse = Pages.signedIn(mvc, "ilse", "river at thaw");
    }

    private Page wear(String asked) {
        return ilse.open("/pumps/" + unit.id() + "/wear" + asked);
    }

    private String onItsPage() {
        return ilse.open("/pumps/" + unit.id()).text();
    }

    private void wearing() {
        past.readAndTest(unit, "2024-04-03", 10, 1);
        past.readAndTest(unit, "2024-10-03", 150, 0.955);
        past.readAndTest(unit, "2025-05-03", 260, 0.925);
        past.readAndTest(unit, "2025-10-03", 400, 0.88);
        past.read(unit, "2026-03-10", 412.6);
    }

    private static int dots(Page page) {
        return page.html().select("svg.curve svg.inner circle.pt").size();
    }

    @Test
    void saysThatThereIsNothingToFollowOnAnUntestedUnit() {
        Page page = wear("");
        assertThat(page.status()).isEqualTo(200);
        assertThat(page.text("h1")).isEqualTo("Nothing to follow on BF-07 yet");
        assertThat(page.text()).contains("No test has a place on the sheet", "The readings of its meter tell no rate");
        assertThat(page.html().select("svg.curve svg.inner")).isEmpty();
        assertThat(ilse.open("/pumps/999999/wear").status()).isEqualTo(404);
    }

    @Test
    void callsTwoTestsTooFew() {
        past.readAndTest(unit, "2025-04-03", 10, 1);
        past.readAndTest(unit, "2025-10-03", 150, 0.7);
        Page page = wear("");
        assertThat(page.text("h1")).isEqualTo("Two tests are too few to call a trend");
        assertThat(dots(page)).isEqualTo(2);
        assertThat(page.html().select("path.worn"))
                .as("a line without limits is drawn")
                .isNotEmpty();
        assertThat(page.html().select("path.band, path.next")).isEmpty();
        assertThat(page.text()).doesNotContain("When it comes to");
        assertThat(onItsPage()).contains("Two tests with run hours are too few to call a trend.");
    }

    @Test
    void forecastsAWearingUnitWithItsDoubt() {
        wearing();
        Page page = wear("");
        assertThat(page.text("h1")).matches("BF-07 is wearing, 3\\.1\\s% in 100\\sh");
        assertThat(page.text(".says"))
                .containsPattern("At about 6\\d\\d run hours")
                .containsPattern("Not before 6\\d\\d.h, at 95.% confidence")
                .contains("Two-sided 95", "By the use of this unit, about");
        assertThat(dots(page)).isEqualTo(4);
        assertThat(page.html().select("path.band")).isNotEmpty();
        assertThat(page.html().select("path.next, rect.next")).isNotEmpty();
        assertThat(page.html().select("svg.curve path.mark")).isNotEmpty();
        List<Element> rows = page.html().select("section[aria-labelledby=tests] tbody tr");
        assertThat(rows).hasSize(4);
        assertThat(rows.get(1).text()).contains("2. 3 Oct 2024", "150.0", "96", "±", "3.00");
        assertThat(onItsPage())
                .containsPattern("Wearing 3\\.1.% per 100.h; reaches 80.% at about 6\\d\\d.h, not before 6\\d\\d.h");
        assertThat(page.html().select("[style], script:not([src])")).isEmpty();
    }

    @Test
    void movesTheForecastWithTheThresholdInTheAddress() {
        wearing();
        String at80 = wear("?threshold=80").text(".figure-word");
        Page at90 = wear("?threshold=90 %");
        assertThat(at90.text(".figure-word")).isNotEqualTo(at80).contains("Passed at about 3");
        assertThat(at90.value("threshold")).isEqualTo("90 %");
        assertThat(at90.text("h1")).contains("is wearing");
    }

    @Test
    void keepsAWrongThresholdAndSaysWhatIsWrong() {
        wearing();
        for (String wrong : new String[] {"eighty", "", "0", "101", "NaN", "1e9", "<b>"}) {
            Page page = ilse.open("/pumps/" + unit.id() + "/wear?threshold=" + wrong);
            assertThat(page.status()).as(wrong).isEqualTo(422);
            assertThat(page.value("threshold")).isEqualTo(wrong);
            assertThat(page.wrong("threshold")).isNotEmpty();
            assertThat(page.html().title()).startsWith("Error:");
            assertThat(page.text("h1")).contains("is wearing");
        }
    }

    @Test
    void drawsTheRobustLineWhenAskedAndSaysWhenItDisagrees() {
        wearing();
        assertThat(wear("").html().select("svg.inner path.jobline")).isEmpty();
        Page asked = wear("?threshold=80&robust=true");
        assertThat(asked.html().select("svg.inner path.jobline")).hasSize(1);
        assertThat(asked.html().select("input[name=robust]").hasAttr("checked")).isTrue();
        assertThat(asked.text()).contains("which is within the interval of the fitted one");
        // one wild test at the end turns the fitted line, not the median of the slopes
        unit = yard.unit("BF-08");
        double[] fractions = {1, 0.9975, 0.995, 0.9925, 0.99, 0.9875, 0.985, 0.75};
        for (int i = 0; i < fractions.length; i++) {
            past.readAndTest(unit, "2025-0%d-03".formatted(1 + i), 20 + 100 * i, fractions[i]);
        }
        assertThat(wear("").text()).contains("they disagree");
    }

    @Test
    void beginsAnewAfterARepairAndDrawsTheRestPale() {
        wearing();
        long jam = past.found(unit, WearYard.noon("2025-11-02"), 2, "Impeller eaten.");
        past.closed(jam, WearYard.noon("2025-11-20"), "New impeller.");
        past.read(unit, "2026-03-12", 415);
        past.test(unit, WearYard.noon("2026-03-12"), 0.99);
        Page page = wear("");
        assertThat(page.text("h1")).isEqualTo("One test is too few to call a trend");
        assertThat(page.text("section[aria-labelledby=repairs]"))
                .contains(
                        "The line begins anew on 20 Nov 2025",
                        "Impeller eaten.",
                        "New impeller.",
                        "severity 2 or more");
        assertThat(page.html().select("svg.inner circle.pale")).hasSize(4);
        assertThat(dots(page)).isEqualTo(5);
        assertThat(page.html().select("section[aria-labelledby=tests] tr.pale-row"))
                .hasSize(4);
        Page through = wear("?threshold=80&through=true");
        assertThat(through.html().select("svg.inner circle.pale")).isEmpty();
        assertThat(through.text()).contains("All tests are counted in one line here");
    }

    @Test
    void listsTestsThatHaveNoMeterReadingNearTheirDay() {
        past.test(unit, WearYard.noon("2024-01-10"), 1);
        wearing();
        past.test(unit, WearYard.noon("2026-03-13"), 0.9);
        Page page = wear("");
        List<Element> rows = page.html().select("section[aria-labelledby=tests] tbody tr");
        assertThat(rows.get(0).text()).contains("1. 10 Jan 2024", "no meter reading near this day");
        assertThat(rows.get(5).text()).contains("6. 13 Mar", "no meter reading near this day");
        assertThat(dots(page)).isEqualTo(4);
        unit = yard.unit("BF-08");
        past.test(unit, WearYard.noon("2025-01-10"), 1);
        assertThat(wear("").text("h1")).isEqualTo("Nothing to follow on BF-08 yet");
        assertThat(onItsPage()).contains("No test has run hours beside it, so that wear cannot be followed.");
    }

    @Test
    void countsAllMetersTogetherAfterASwap() {
        past.readAndTest(unit, "2024-04-03", 400, 1);
        past.swap(unit, "2024-08-01", 412.6, 0);
        past.readAndTest(unit, "2024-10-03", 100, 0.96);
        past.readAndTest(unit, "2025-10-03", 250, 0.91);
        Page page = wear("");
        assertThat(page.text("section[aria-labelledby=tests] tbody")).contains("400.0", "512.6", "662.6");
    }

    @Test
    void forecastsNothingOfARetiredUnit() {
        wearing();
        pumps.retire(unit.id(), pumps.unit(unit.id()).version(), LocalDate.of(2026, 3, 12), "shaft bent", yard.ilse());
        Page page = wear("");
        assertThat(page.text()).contains("Retired 12 Mar. Nothing is forecast.");
        assertThat(page.text(".says")).isEmpty();
        assertThat(page.text("h1")).contains("is wearing");
        assertThat(onItsPage()).containsPattern("Wearing 3\\.1.% per 100.h\\.");
    }

    @Test
    void expectsOfAUnitWithoutALineWhatItsModelDoes() {
        wearing();
        for (int i = 1; i <= 3; i++) {
            Unit like = yard.unit("BF-1" + i);
            past.readAndTest(like, "2024-04-03", 10, 1);
            past.readAndTest(like, "2024-10-03", 210, 0.95 - 0.005 * i);
            past.readAndTest(like, "2025-10-03", 400, 0.9 - 0.01 * i);
        }
        assertThat(wear("").text("section[aria-labelledby=pooled]"))
                .contains("units of this model", "empirical Bayes", "too narrow");
        unit = yard.unit("BF-20");
        past.readAndTest(unit, "2025-10-03", 30, 1);
        assertThat(wear("").text("section[aria-labelledby=pooled]"))
                .contains("It has no line of its own yet. The 4 units of this model", "it would come to 80");
    }

    @Test
    void remarksOnHeadsAndRigsThatDiffer() {
        wearing();
        assertThat(wear("").text()).doesNotContain("may be the head's", "may be the rig's");
        past.read(unit, "2026-03-12", 414);
        past.testAtLift(unit, WearYard.noon("2026-03-12"), 4.5, 33, "R-2");
        assertThat(wear("").text()).contains("may be the head's", "may be the rig's");
    }

    @Test
    void listsTestsThatNoLongerFitTheModelsCurve() {
        wearing();
        var model = unit.model();
        pumps.changeModel(
                model.id(),
                model.version(),
                new ModelDraft(
                        model.name(),
                        model.kind(),
                        model.drive(),
                        model.hasFloat(),
                        model.ratings(),
                        model.curveForm(),
                        List.of(new CurvePoint(0, 2.5), new CurvePoint(8, 1)),
                        0.05,
                        null,
                        null),
                yard.ilse());
        Page page = wear("");
        assertThat(page.status()).isEqualTo(200);
        assertThat(page.text()).contains("no longer fits the model's curve");
    }

    @Test
    void letsATechnicianLook() {
        wearing();
        yard.teo();
        clock.advance(Duration.ofMinutes(1));
        Page page = Pages.signedIn(mvc, "teo", "mud on boots").open("/pumps/" + unit.id() + "/wear");
        assertThat(page.text("h1")).contains("is wearing");
    }
}
