package freshet.readings;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.Pages;
import freshet.Pages.Page;
import freshet.TestClock;
import freshet.measures.UnitSystem;
import freshet.people.People;
import freshet.places.Places;
import freshet.pumps.Pumps;
import freshet.pumps.Ratings;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

@FreshetTest
class FlowMethodPagesTests {

    private static final String[] GAUGED = {
        "at", "2026-03-14T14:02", "gauge", "60", "gaugeHeight", "0.4", "gaugeBore", "38.1", "rig", "Bench"
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

    long unit;
    String address;
    Pages pages;

    @BeforeEach
    void signIn() {
        clock.set("2026-03-14T19:02:30Z");
        Yard yard = new Yard(people, places, pumps, UnitSystem.SI);
        unit = yard.unit("BF-07", yard.model("Exact", 0, Ratings.NONE, Yard.FT_02))
                .id();
        address = "/pumps/" + unit + "/flow-test";
        pages = Pages.signedIn(mvc, "ilse", Yard.PASSWORD);
    }

    private Page submit(String... typed) {
        List<String> all = new ArrayList<>(List.of(GAUGED));
        all.addAll(List.of(typed));
        return pages.submit(address, all.toArray(String[]::new));
    }

    private static String chosen(Page page) {
        return page.html().select("[name=by.method][checked]").val();
    }

    private static String plain(String text) {
        return text.replace('\u00a0', ' ');
    }

    @Test
    void fillsAContainerUnlessAnotherWayIsChosen() {
        Page page = pages.open(address);
        assertThat(page.html().select("[name=by.method]")).hasSize(4);
        assertThat(chosen(page)).isEqualTo("TIMED_CONTAINER");
        assertThat(submit("by.method", "nonsense").wrong("container")).startsWith("Type how much");
    }

    @Test
    void readsAMeterAndNeedsNoContainer() {
        Page worked = submit("by.method", "METER", "by.meter", "6.2");
        assertThat(worked.status()).isEqualTo(200);
        assertThat(plain(worked.text(".result")))
                .contains("Flow 6.20 m³/h ± 0.19 m³/h by the meter", "The meter ran full.", "Ten bores")
                .doesNotContain("Mean of", "Fewer than three");
        String kept = submit(
                        "by.method", "METER", "by.meter", "6.2", "by.meterFixed", "0.05", "lift", "5", "press", "keep")
                .location();
        assertThat(plain(pages.open(kept).text("main")))
                .contains("A flow meter in the line was read", "6.20 m³/h ± 1.5 % ± 0.05 m³/h")
                .doesNotContain("Stopwatch");
        assertThat(chosen(pages.open(address))).isEqualTo("METER");
        assertThat(pages.open("/pumps/" + unit).status()).isEqualTo(200);
        long id = readings.flowTests(unit).get(0).id();
        Page split = pages.open("/jobs/pump-or-line?test=" + id);
        assertThat(split.status()).isEqualTo(200);
        assertThat(split.value("flow")).isEqualTo("6.2");
    }

    @Test
    void timesTheFallOfAPitWithWhatRunsIn() {
        String[] pit = {
            "by.method",
            "LEVEL_DROP",
            "by.pitDiameter",
            "600",
            "by.displaced",
            "5",
            "by.fall",
            "30 cm",
            "by.fallSeconds",
            "1:00",
            "by.riseBefore",
            "30",
            "by.riseBeforeSeconds",
            "60"
        };
        Page worked = submit(pit);
        assertThat(plain(worked.text(".result")))
                .contains("Flow 5.32 m³/h", "by the fall of level", "as much ran in as was timed");
        List<String> keep = new ArrayList<>(List.of(pit));
        keep.addAll(List.of("press", "keep"));
        Page kept = pages.open(submit(keep.toArray(String[]::new)).location());
        assertThat(plain(kept.text("main"))).contains("600.0 mm across", "300.0 mm in 60.0 s", "30.0 mm in 60.0 s");
        assertThat(pages.open(address).value("by.pitDiameter")).isEqualTo("600");
    }

    @Test
    void measuresAJet() {
        String[] jet = {"by.method", "TRAJECTORY", "by.jetBore", "2 in", "by.jetReach", "360", "by.jetFall", "300"};
        assertThat(plain(submit(jet).text(".result"))).contains("by the jet", "level and runs full");
        List<String> keep = new ArrayList<>(List.of(jet));
        keep.addAll(List.of("press", "keep"));
        Page kept = pages.open(submit(keep.toArray(String[]::new)).location());
        assertThat(plain(kept.text("main"))).contains("50.8 mm", "360.0 mm ± 10.0 mm");
    }

    @Test
    void saysWhatIsWrongAtItsFieldAndKeepsTheText() {
        Page pit = submit(
                "by.method", "LEVEL_DROP", "by.fall", "8 psi", "by.riseAfter", "20", "container", "60", "lap1", "x");
        assertThat(pit.status()).isEqualTo(422);
        assertThat(chosen(pit)).isEqualTo("LEVEL_DROP");
        assertThat(pit.wrong("by.pitDiameter")).isEqualTo("Type how wide the pit is, or its area.");
        assertThat(pit.wrong("by.fall")).contains("psi");
        assertThat(pit.value("by.fall")).isEqualTo("8 psi");
        assertThat(pit.wrong("by.fallSeconds")).isEqualTo("This is needed too.");
        assertThat(pit.wrong("by.riseAfterSeconds")).isEqualTo("This is needed too.");
        // what belongs to a way that was not chosen is kept and not judged
        assertThat(pit.value("lap1")).isEqualTo("x");
        assertThat(pit.wrong("lap1")).isEmpty();
        assertThat(pit.html().select(".wrongs a").eachAttr("href")).contains("#by.fall", "#by.pitDiameter");

        assertThat(submit("by.method", "METER", "by.meter", "-6").wrong("by.meter"))
                .startsWith("This is outside");
        Page back = submit("by.method", "METER", "by.meter", "6.2", "speed", "-5", "press", "keep");
        assertThat(back.wrong("speed")).startsWith("This is outside");
        assertThat(back.value("speed")).isEqualTo("-5");
        assertThat(submit("by.method", "METER").wrong("by.meter")).isEqualTo("This is needed too.");
        assertThat(submit("by.method", "METER", "by.meter", "100").wrong("by.meter"))
                .contains("Did you read L/min?");
        assertThat(submit("by.method", "TRAJECTORY", "by.jetBore", "50").wrong("by.jetReach"))
                .isEqualTo("This is needed too.");
        assertThat(readings.flowTests(unit)).isEmpty();
    }
}
