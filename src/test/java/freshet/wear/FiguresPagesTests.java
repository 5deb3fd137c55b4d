package freshet.wear;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.Pages;
import freshet.Pages.Page;
import freshet.TestClock;
import freshet.care.CareYard;
import freshet.pumps.PumpKind;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import freshet.pumps.UnitArrival;
import freshet.pumps.UnitDraft;
import freshet.pumps.Whereabouts;
import freshet.readings.MeterKind;
import freshet.readings.ReadingDraft;
import freshet.readings.Readings;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

@FreshetTest
class FiguresPagesTests {

    @Autowired
    MockMvc mvc;

    @Autowired
    CareYard yard;

    @Autowired
    WearYard past;

    @Autowired
    Pumps pumps;

    @Autowired
    Readings readings;

    @Autowired
    TestClock clock;

    Pages ilse;

    @BeforeEach
    void openTheYard() {
        clock.set("2026-03-14T15:00:00Z");
        yard.ilse();
        ilse = Pages.signedIn(mvc, "ilse", "river at thaw");
    }

    private Page figures(String asked) {
        return ilse.open("/fleet-figures" + asked);
    }

    /** Ten units read at 0 and 500 h in care; five fail at the hours of a reading: 100, 150, 200, 250, 300. */
    private void tenUnits() {
        for (int i = 0; i < 10; i++) {
            Unit unit = yard.unit("BF-1" + i);
            past.read(unit, "2025-01-01", 0);
            if (i < 5) {
                String day = "2025-03-0%d".formatted(1 + i);
                past.read(unit, day, 100 + 50 * i);
                long jam = past.found(unit, WearYard.noon(day), 3, "Jammed.");
                past.closed(jam, WearYard.noon("2025-03-20"), "Cleared.");
            }
            past.read(unit, "2026-01-01", 500);
        }
    }

    private static String part(Page page, String name) {
        return page.text("section[aria-labelledby=" + name + "-part]");
    }

    @Test
    void saysNotEnoughWhereThereIsNothing() {
        Page page = figures("");
        assertThat(page.status()).isEqualTo(200);
        assertThat(page.text("h1")).isEqualTo("No unit in care here yet");
        assertThat(part(page, "lives")).contains("There is no life to count.");
        assertThat(part(page, "law")).contains("Not enough to say");
        assertThat(part(page, "mtbf")).contains("not enough to say");
        assertThat(part(page, "trend")).contains("Not enough to say");
        assertThat(page.html()
                        .select("section[aria-labelledby=indicators-part] dd b")
                        .eachText())
                .containsOnly("not enough to say");
        assertThat(page.text()).doesNotContain("NaN", "null", "Infinity");
        assertThat(page.html().select("svg.inner")).isEmpty();
    }

    @Test
    void boundsHoursBetweenFailuresWithoutAFailure() {
        Unit unit = yard.unit("BF-07");
        past.read(unit, "2025-01-01", 0);
        past.read(unit, "2026-01-01", 300);
        Page page = figures("");
        // 300/-ln 0.05
        assertThat(part(page, "mtbf")).contains("not enough to say", "Without a failure there is no mean", "100");
        assertThat(part(page, "lives")).contains("None of the 1 lives has ended in a failure");
        assertThat(page.html().select("svg.inner")).isEmpty();
        assertThat(part(page, "indicators")).contains("100.0 %");
    }

    @Test
    void showsEachFigureWithItsSampleAndItsMeaning() {
        tenUnits();
        Page page = figures("");
        assertThat(page.text("h1")).isEqualTo("5 failures of 10 units in care");
        assertThat(page.html().select("svg.inner")).hasSize(2);
        assertThat(page.html()
                        .select("section[aria-labelledby=lives-part] tbody tr")
                        .eachText())
                .hasSize(5)
                .first()
                .asString()
                .startsWith("100.0 10 1 90");
        assertThat(part(page, "law")).contains("Shape", "from 10 lives, 5 failures", "a convention more than a truth");
        assertThat(part(page, "mtbf")).contains("1,000", "5,000", "5 failures", "e-Handbook 8.4.5.1");
        assertThat(page.html()
                        .select("section[aria-labelledby=recurrence-part] tbody tr")
                        .last()
                        .text())
                .startsWith("300.0 10 1 0.50");
        assertThat(page.html()
                        .select("section[aria-labelledby=indicators-part] dd")
                        .eachText())
                .allSatisfy(text -> assertThat(text.length()).isGreaterThan(25));
        assertThat(page.text()).contains("A failure is a finding of severity 3 or 4");
        assertThat(page.html().select("[style], script:not([src])")).isEmpty();
        assertThat(page.html().select("[id]").eachAttr("id")).doesNotHaveDuplicates();
    }

    @Test
    void answersTheChanceOfASeasonInTheAddress() {
        tenUnits();
        Page page = figures("?age=100&season=50");
        assertThat(page.status()).isEqualTo(200);
        String shape = page.html()
                .select("section[aria-labelledby=law-part] dd b")
                .get(0)
                .text();
        String scale = page.html()
                .select("section[aria-labelledby=law-part] dd b")
                .get(1)
                .text()
                .replaceAll("[^0-9.]", "");
        double k = Double.parseDouble(shape);
        double eta = Double.parseDouble(scale);
        long percent = Math.round(100 * Math.exp(Math.pow(100 / eta, k) - Math.pow(150 / eta, k)));
        assertThat(part(page, "season")).contains(percent + " % of such units", "5 failures, whose own doubt");
        assertThat(page.value("age")).isEqualTo("100");
        assertThat(part(figures("?model=" + yard.model(PumpKind.ENGINE_TRASH) + "&age=1&season=2"), "season"))
                .contains("there is no law of lives");
    }

    @Test
    void findsTheAgeOfRenewalByTheLawTyped() {
        // a Weibull life of shape 2 and scale 2,000 h, costs 1 and 5: the best age solves
        // 2 z ∫exp(-s²) ds - (1 - exp(-z²)) = 1/4 with z = T/2000; scipy 1.17.1 brentq gives 1021.3104 h
        Page page = figures("?planned=1&failure=5&shape=2&scale=2000");
        assertThat(part(page, "renewal")).contains("Renew at about 1,021");
        assertThat(part(figures("?planned=1&failure=5&shape=1&scale=2000"), "renewal"))
                .contains("Run to failure");
        assertThat(part(figures("?planned=1&failure=5"), "renewal")).contains("type a shape and a scale");
        Page half = figures("?planned=1&shape=2");
        assertThat(half.status()).isEqualTo(422);
        assertThat(half.wrong("failure")).isNotEmpty();
        assertThat(half.wrong("scale")).isNotEmpty();
        assertThat(half.value("planned")).isEqualTo("1");
    }

    @Test
    void countsSparesForTheDaysOfDelivery() {
        // 40 × 0.15 a year, 14 of 365 days, peak 3: mean 0.690; Poisson P(≤ 1) = 0.848, P(≤ 2) = 0.967
        Page page = figures("?units=40&rate=0.15&lead=14&peak=3");
        assertThat(part(page, "spares")).contains("Hold 2.", "0.69", "96.7 %");
        assertThat(part(figures("?demand=6&lead=14&peak=3&level=80"), "spares")).contains("Hold 1.");
        assertThat(part(figures("?demand=100000&lead=3650&peak=100"), "spares")).contains("more than a shelf holds");
        assertThat(figures("?demand=6").wrong("lead")).isNotEmpty();
        assertThat(figures("?units=6&lead=3").wrong("rate")).isNotEmpty();
    }

    @Test
    void keepsWhatIsTypedInOtherPartsAndSaysWhatIsWrongAtItsPlace() {
        tenUnits();
        Page page = figures("?age=x&season=-5&units=40&rate=0.15&lead=14&level=200&planned=<b>&failure=5");
        assertThat(page.status()).isEqualTo(422);
        assertThat(page.wrong("age")).contains("is not a time");
        assertThat(page.wrong("season")).contains("must lie between 0 and 1,000,000");
        assertThat(page.wrong("level")).isNotEmpty();
        assertThat(page.wrong("planned")).isNotEmpty();
        assertThat(page.html()
                        .select("section[aria-labelledby=season-part] input[type=hidden][name=units]")
                        .val())
                .isEqualTo("40");
        assertThat(page.html().title()).startsWith("Error:");
        assertThat(page.html().select("input[name=planned]").eachAttr("value")).contains("<b>");
    }

    @Test
    void choosesAModelByTheAddress() {
        tenUnits();
        Unit other =
                yard.unit("QM-1", PumpKind.SUMP_WITH_FLOAT, yard.brackenfold().id(), CareYard.LONG_AGO);
        Page all = figures("");
        assertThat(all.html().select("section[aria-labelledby=by-model] tbody tr"))
                .hasSize(2);
        Page one = figures("?model=" + other.model().id());
        assertThat(one.text("h1")).isEqualTo("No failure of one unit in care");
        assertThat(one.html().select("section[aria-labelledby=by-model]")).isEmpty();
        assertThat(one.html().select("option[selected]").text())
                .isEqualTo(other.model().name());
        assertThat(figures("?model=999999").status()).isEqualTo(404);
        assertThat(figures("?model=abc").text("h1")).contains("11 units");
        assertThat(ilse.open("/pumps").html().select("a[href=/fleet-figures]")).hasSize(1);
    }

    @Test
    void addsUpThousandsOfUnits() {
        long site = yard.site("Plain", CareYard.CHICAGO).id();
        long model = yard.model(PumpKind.UTILITY_SUBMERSIBLE);
        List<UnitArrival> arrivals = new ArrayList<>();
        for (int i = 0; i < 2100; i++) {
            arrivals.add(new UnitArrival(
                    new UnitDraft("N-" + i, null, model, null, LocalDate.of(2025, 1, 1), null), Whereabouts.at(site)));
        }
        pumps.takeInUnits(arrivals, yard.ilse());
        List<ReadingDraft> rows = new ArrayList<>();
        for (long unit : pumps.activeUnitIds()) {
            rows.add(ReadingDraft.of(unit, MeterKind.RUN_HOURS, WearYard.noon("2025-01-02"), BigDecimal.ZERO));
            rows.add(ReadingDraft.of(unit, MeterKind.RUN_HOURS, WearYard.noon("2025-09-02"), BigDecimal.TEN));
        }
        readings.recordReadings(rows, yard.ilse());
        assertThat(figures("").text(".lead")).contains("2,100 units in care", "2,100 of 2,100 units", "21,000");
    }
}
