package freshet.readings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import freshet.FreshetTest;
import freshet.Pages;
import freshet.TestClock;
import freshet.hydraulics.Affinity;
import freshet.hydraulics.FlowTestReduction;
import freshet.hydraulics.MeasuredFlow;
import freshet.hydraulics.MeasuredHead;
import freshet.measures.UnitSystem;
import freshet.people.People;
import freshet.people.Refused;
import freshet.places.Places;
import freshet.pumps.CurveForm;
import freshet.pumps.Drive;
import freshet.pumps.Model;
import freshet.pumps.ModelDraft;
import freshet.pumps.PumpKind;
import freshet.pumps.Pumps;
import freshet.pumps.Ratings;
import freshet.readings.FlowBy.LineMeter;
import freshet.readings.FlowTestDraft.Gauge;
import freshet.readings.FlowTestResult.Remark;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

@FreshetTest
class FlowCorrectionTests {

    private static final Instant SPRING = Instant.parse("2026-03-14T12:00:00Z");

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

    @BeforeEach
    void openTheYard() {
        clock.set("2026-06-01T12:00:00Z");
        yard = new Yard(people, places, pumps, UnitSystem.SI);
    }

    private void modelOf(Drive drive, @Nullable Double volts, @Nullable Double hertz, @Nullable Double rpm) {
        Ratings ratings = new Ratings(volts, hertz, null, null, null, null, null, null, null, null, null, null, rpm);
        unit = yard.unit("BF-07", model(drive, ratings)).id();
    }

    private ModelDraft model(Drive drive, Ratings ratings) {
        return new ModelDraft(
                "Model",
                drive == Drive.ENGINE ? PumpKind.ENGINE_TRASH : PumpKind.UTILITY_SUBMERSIBLE,
                drive,
                false,
                ratings,
                CurveForm.TABLE,
                Yard.FT_02,
                0,
                null,
                null);
    }

    private FlowTestDraft draft(@Nullable Double rpm, @Nullable Double volts, @Nullable Double hertz) {
        return new FlowTestDraft(
                unit,
                SPRING,
                "RIG-1",
                null,
                List.of(),
                null,
                new Gauge(50, 1, 0.4, 38.1),
                0.03,
                20,
                null,
                1,
                List.of(),
                volts,
                null,
                hertz,
                null,
                null,
                new LineMeter(6, 0.015, 0),
                rpm);
    }

    private FlowTestResult kept(@Nullable Double rpm, @Nullable Double volts, @Nullable Double hertz) {
        return readings.flowTest(readings.recordFlowTest(draft(rpm, volts, hertz), yard.me));
    }

    private FlowTestReduction against(Affinity speed) {
        return FlowTestReduction.of(
                speed.curve(pumps.unit(unit).model().curve()),
                MeasuredFlow.meter(6, 0.015, 0),
                new MeasuredHead.ByGauge(50, 0.4, 38.1, 1, 20, 0.03),
                0);
    }

    @Test
    void bringsTheCurveToTheSpeedThatWasRead() {
        modelOf(Drive.ENGINE, null, null, 3600.0);
        FlowTestResult test = kept(3300.0, null, null);
        assertThat(test.facts().speedRpm()).isEqualTo(3300);
        assertThat(test.figures().rated()).isEqualTo(against(Affinity.ofSpeeds(3300, 3600)));
        // by hand: the curve's point (6 m³/h, 7.5 m) lies at 5.5 m³/h and 6.302 m on 3300 rpm
        assertThat(FlowTestWorking.atSpeed(pumps.unit(unit).model(), test.facts())
                        .headAt(5.5))
                .isCloseTo(7.5 * 3300 * 3300 / 3600 / 3600, within(1e-9));
        assertThat(test.figures().corrections())
                .containsExactly(new Correction(Correction.By.SPEED, true, 3300.0, 3600.0, 3300.0 / 3600));
        // drawn where it would lie at the rated speed
        assertThat(readings.plot(unit).points()).singleElement().satisfies(point -> {
            assertThat(point.flowM3h()).isCloseTo(6 * 3600 / 3300.0, within(1e-9));
            assertThat(point.headM()).isCloseTo(test.figures().headM() * 3600 * 3600 / 3300 / 3300, within(1e-9));
        });
        assertThat(readings.plot(unit).line()).isNotNull();
    }

    @Test
    void saysThatAnEnginesSpeedWasNotReadOrCannotBeCorrected() {
        modelOf(Drive.ENGINE, null, null, null);
        assertThat(readings.workOut(draft(null, null, null), yard.me).figures().corrections())
                .extracting(Correction::key)
                .containsExactly("SPEED.unread");
        FlowTestResult.Figures figures =
                readings.workOut(draft(3300.0, null, null), yard.me).figures();
        assertThat(figures.corrections()).extracting(Correction::key).containsExactly("SPEED.left");
        assertThat(figures.rated()).isEqualTo(against(new Affinity(1)));
    }

    @Test
    void correctsForVoltsWhereTheSlipIsKnown() {
        modelOf(Drive.SINGLE_PHASE, 120.0, 60.0, 3450.0);
        FlowTestResult test = kept(null, 108.0, null);
        // 3600 rpm synchronous, so the slip is 150/3600
        assertThat(test.figures().rated().remainingFraction())
                .isCloseTo(against(Affinity.ofVoltages(108, 120, 150 / 3600.0)).remainingFraction(), within(1e-9));
        assertThat(test.figures().corrections()).extracting(Correction::key).containsExactly("VOLTS.made");
        // by hand: (1 - 0.0416667/0.81)/(1 - 0.0416667)
        assertThat(test.figures().corrections().get(0).ratio()).isCloseTo(0.989802, within(1e-6));
    }

    @Test
    void saysHowFarOffTheVoltsWereWhereTheyCannotBeCorrected() {
        modelOf(Drive.SINGLE_PHASE, 120.0, 60.0, null);
        FlowTestResult.Figures figures =
                readings.workOut(draft(null, 108.0, null), yard.me).figures();
        assertThat(figures.corrections()).singleElement().satisfies(volts -> {
            assertThat(volts.key()).isEqualTo("VOLTS.left");
            assertThat(volts.off()).isCloseTo(0.1, within(1e-12));
        });
        assertThat(figures.rated()).isEqualTo(against(new Affinity(1)));
        assertThat(readings.workOut(draft(null, 119.0, null), yard.me).figures().corrections())
                .isEmpty();
    }

    @Test
    void leavesVoltsAloneFarOffTheirRatingAndOnAnotherFrequency() {
        modelOf(Drive.THREE_PHASE, 230.0, 60.0, 1750.0);
        assertThat(readings.workOut(draft(null, 120.0, null), yard.me).figures().corrections())
                .extracting(Correction::key)
                .containsExactly("VOLTS.left");
        FlowTestResult slow = readings.workOut(draft(null, 210.0, 55.0), yard.me);
        assertThat(slow.figures().corrections())
                .extracting(Correction::key)
                .containsExactly("FREQUENCY.made", "VOLTS.left");
        assertThat(slow.remarks()).contains(Remark.OTHER_FREQUENCY);
        // a speed that was read stands for both
        assertThat(readings.workOut(draft(1690.0, 210.0, 55.0), yard.me)
                        .figures()
                        .corrections())
                .extracting(Correction::key)
                .containsExactly("SPEED.made");
    }

    @Test
    void refusesASpeedThatFitsNoSuchPumpAndLivesWithAChangedModel() {
        modelOf(Drive.ENGINE, null, null, 3600.0);
        Refused refused =
                catchThrowableOfType(Refused.class, () -> readings.workOut(draft(90_000.0, null, null), yard.me));
        assertThat(refused.wrongs().get(0).field()).isEqualTo("speed");
        kept(3300.0, null, null);
        Model model = pumps.unit(unit).model();
        Ratings slow = new Ratings(null, null, null, null, null, null, null, null, null, null, null, null, 101.0);
        pumps.changeModel(model.id(), model.version(), model(Drive.ENGINE, slow), yard.me);
        assertThat(readings.flowTests(unit))
                .singleElement()
                .satisfies(test -> assertThat(test.figures()).isNull());
        assertThat(readings.plot(unit).points()).isEmpty();
    }

    @Test
    void saysOnThePageWhatWasCorrected() {
        modelOf(Drive.ENGINE, null, null, 3600.0);
        Pages pages = Pages.signedIn(mvc, "ilse", Yard.PASSWORD);
        String[] typed = {
            "at",
            "2026-03-14T14:02",
            "by.method",
            "METER",
            "by.meter",
            "6",
            "gauge",
            "50",
            "gaugeHeight",
            "0.4",
            "gaugeBore",
            "38.1",
            "speed",
            "3300"
        };
        assertThat(pages.submit("/pumps/" + unit + "/flow-test", typed).text(".result"))
                .contains("It turned at 3,300 rpm", "holds at 3,600 rpm", "flow × 0.917, head × 0.840");
        long id = readings.recordFlowTest(draft(null, null, null), yard.me);
        assertThat(pages.open("/flow-tests/" + id).text("main")).contains("may be the engine’s");
    }

    @Test
    void keepsTheRatedSpeedOfAModelThroughItsForm() {
        modelOf(Drive.ENGINE, null, null, 3600.0);
        long id = pumps.unit(unit).model().id();
        Pages pages = Pages.signedIn(mvc, "ilse", Yard.PASSWORD);
        assertThat(pages.open("/pumps/models/" + id + "/edit").value("speedRpm"))
                .isEqualTo("3600");
        assertThat(pages.open("/pumps/models/" + id).text("main")).contains("3,600 rpm");
        assertThat(pages.submit("/pumps/models/" + id + "/edit", "version", "0", "speedRpm", "36 mph")
                        .wrong("speedRpm"))
                .contains("36 mph");
    }
}
