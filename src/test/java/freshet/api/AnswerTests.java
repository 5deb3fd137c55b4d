package freshet.api;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import freshet.FreshetTest;
import freshet.people.People;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import tools.jackson.databind.JsonNode;

/** What an answer says where there is little to say, and the names that programs rely on. */
@FreshetTest
class AnswerTests {

    private static final String PUMP = "\"curve\": [{\"flowM3h\": 0, \"headM\": 11}, {\"flowM3h\": 6, \"headM\": 7},"
            + " {\"flowM3h\": 11, \"headM\": 1}]";

    private static final String HOSE = "{\"liftM\": %s, \"sections\": [{\"innerDiameterMm\": 25.4, \"lengthM\": 15,"
            + " \"roughnessMm\": 0.0015, \"lossCoefficient\": 1.2}]}";

    @Autowired
    MockMvc mvc;

    @Autowired
    People people;

    Program program;

    @BeforeEach
    void signUp() {
        program = Program.with(mvc, people);
    }

    private JsonNode ask(String name, String request) throws Exception {
        return program.ask(name, Program.JSON.readTree(request));
    }

    /** Calculation, place in the answer (/ for the whole), names. */
    private static final String NAMES = """
            friction-factor / frictionFactor
            line-loss / headM liftM frictionM fittingsM exitM sections
            line-loss /sections/0 velocityMs reynolds frictionFactor lossM
            duty-point / status flowM3h headM liftM frictionM fittingsM exitM sections
            duty-point /sections/0 velocityMs reynolds frictionFactor lossM
            drawdown / status minutes volumeM3 startFlowM3h stopFlowM3h settlesAtLevelM
            cycling / status cycleMinutes startsPerHour runMinutesPerCycle worstStartsPerHour worstInflowM3h
            flow-test / flowM3h totalHeadM referenceFlowM3h remainingFraction expandedUncertainty headFraction \
                headExpandedUncertainty statedBy repeatability verdictReasons
            pump-or-line / ratedFlowM3h expectedFlowM3h lostToLineM3h lostToPumpM3h shareOfLine
            affinity / curve
            affinity /curve/0 flowM3h headM
            npsh-available / npshM
            capacity-trend / verdict n df intercept slopePerHour seIntercept seSlope residualSd rSquared \
                slopeInterval at hoursToThreshold robust
            capacity-trend /at/0 runHours fit seFit meanLower meanUpper readingLower readingUpper
            capacity-trend /hoursToThreshold status estimate lowerOneSided interval lowerOneSidedNextReading \
                remainingEstimate remainingLower
            capacity-trend /robust slopePerHour intercept slopeInterval
            pooled-wear / betweenUnitVariance meanSlope seMeanSlope units
            pooled-wear /units/0 weightOfMean slopePerHour standardError
            lives / n failures medianHours medianInterval productLimit weibull
            lives /productLimit/0 hours atRisk failures survival standardError lower upper
            lives /weibull status shape scaleHours seShape seScale shapeInterval scaleInterval b10Hours \
                b10Interval meanHours logLikelihood
            survival / conditionalSurvival unconditionalSurvival b10Hours
            mtbf / mtbfHours lowerOneSided upperOneSided interval
            recurrence / units events table
            recurrence /table/0 hours atRisk events meanCumulative standardError lower upper
            failure-trend / shape scale shapeUnbiased intensityAtEnd mtbfAtEnd shapeInterval chiSquare \
                chiSquareDf laplace
            replacement-age / policy optimumHours costRate costRateRunToFailure savingFraction
            spares / meanDemand stock probabilityOfNoShortage
            indicators / failures mtbfOperatingHours metbfCalendarHours meanDownHours meanRepairHours \
                meanActiveRepairHours availabilityTimeBased availabilityRestoration mtbfLowerOneSided95
            """;

    @Test
    void hasTheNamesThatWereAgreed() throws Exception {
        for (String line : NAMES.lines().toList()) {
            List<String> words = List.of(line.split(" +"));
            JsonNode answer = program.ask(words.get(0), OpenApi.examples().get(words.get(0)));
            String pointer = words.get(1).equals("/") ? "" : words.get(1);
            assertThat(answer.at(pointer).propertyNames()).as(line).containsAll(words.subList(2, words.size()));
        }
        assertThat(NAMES.lines().map(line -> line.split(" ")[0]).distinct())
                .containsExactlyElementsOf(Calculations.BY_NAME.keySet());
    }

    @Test
    void givesEveryDigit() throws Exception {
        assertThat(program.send("cycling", "{\"storageM3\": 0.035, \"inflowM3h\": 2.4, \"pumpFlowM3h\": 4.8}")
                        .getContentAsString())
                .contains("\"worstStartsPerHour\":34.285714285714285");
    }

    @ParameterizedTest
    @CsvSource({"11", "11.5", "4000"})
    void cannotLiftToTheShutOffHead(String lift) throws Exception {
        JsonNode answer = ask("duty-point", "{" + PUMP + ", \"line\": " + HOSE.formatted(lift) + "}");
        assertThat(answer.get("status").stringValue()).isEqualTo("CANNOT_LIFT");
        assertThat(answer.get("flowM3h").doubleValue()).isZero();
        assertThat(answer.get("headM").doubleValue()).isEqualTo(11);
        assertThat(nulls(answer)).contains("frictionM", "fittingsM", "exitM");
    }

    @Test
    void extrapolatesNoCurve() throws Exception {
        JsonNode answer = ask("duty-point", "{" + PUMP + ", \"line\": {\"liftM\": 0.2, \"sections\": []}}");
        assertThat(answer.get("status").stringValue()).isEqualTo("BEYOND_CURVE");
        assertThat(nulls(answer)).contains("flowM3h", "headM", "frictionM", "fittingsM", "exitM");
    }

    private static List<String> nulls(JsonNode answer) {
        return answer.propertyStream()
                .filter(field -> field.getValue().isNull())
                .map(field -> field.getKey())
                .toList();
    }

    @Test
    void partsOfADutyPointAddUp() throws Exception {
        JsonNode answer = program.ask("duty-point", OpenApi.examples().get("duty-point"));
        double sum = 0;
        for (String part : List.of("liftM", "frictionM", "fittingsM", "exitM")) {
            sum += answer.get(part).doubleValue();
        }
        assertThat(answer.get("headM").doubleValue()).isCloseTo(sum, within(1e-9));
        double sections = answer.get("sections")
                .valueStream()
                .mapToDouble(section -> section.get("lossM").doubleValue())
                .sum();
        assertThat(sections)
                .isCloseTo(
                        answer.get("frictionM").doubleValue()
                                + answer.get("fittingsM").doubleValue(),
                        within(1e-9));
    }

    @Test
    void takesWhatIsUsualForWhatIsLeftOut() throws Exception {
        String given = HOSE.formatted("4")
                .replace("\"sections\"", "\"waterTemperatureC\": 15," + " \"exitLossCoefficient\": 1, \"sections\"");
        assertThat(ask("duty-point", "{" + PUMP + ", \"line\": " + HOSE.formatted("4") + "}"))
                .isEqualTo(ask("duty-point", "{" + PUMP + ", \"line\": " + given + "}"));
        assertThat(ask("mtbf", "{\"totalHours\": 900, \"failures\": 3, \"termination\": \"TIME\"}"))
                .isEqualTo(ask(
                        "mtbf", "{\"totalHours\": 900, \"failures\": 3, \"termination\": \"TIME\", \"level\": 0.95}"));
    }

    /** h = 10.67 L Q^1.852/(C^1.852 d^4.8704), worked out here. */
    @Test
    void reckonsASectionByHazenWilliams() throws Exception {
        JsonNode answer = ask(
                "line-loss",
                "{\"flowM3h\": 5, \"line\": {\"liftM\": 0, \"exitLossCoefficient\": 0, \"sections\":"
                        + " [{\"innerDiameterMm\": 38.1, \"lengthM\": 40, \"hazenWilliamsC\": 140, \"lossCoefficient\": 0}]}}");
        double expected = 10.67 * 40 * Math.pow(5 / 3600.0, 1.852) / (Math.pow(140, 1.852) * Math.pow(0.0381, 4.8704));
        assertThat(answer.get("headM").doubleValue()).isCloseTo(expected, within(1e-9 * expected));
        assertThat(answer.at("/sections/0/frictionFactor").isNull()).isTrue();
    }

    /** Pressure head, height and velocity head, worked out here; density of water at 20 °C 998.2072 kg/m³ (IAPWS-95). */
    @Test
    void readsTheHeadOfAFlowTestFromAGauge() throws Exception {
        JsonNode answer = ask(
                "flow-test",
                "{" + PUMP + ", \"containerL\": 60, \"containerUncertaintyL\": 0.5, \"seconds\": [43.2],"
                        + " \"timingUncertaintyS\": 0.2, \"gaugeKPa\": 55, \"gaugeAboveWaterM\": 0.9,"
                        + " \"gaugeBoreMm\": 31.75, \"gaugeUncertaintyKPa\": 1, \"waterTemperatureC\": 20,"
                        + " \"liftUncertaintyM\": 0.01}");
        double velocity = 5.0 / 3600 / (Math.PI / 4 * 0.03175 * 0.03175);
        double head = 55_000 / (998.2072 * 9.80665) + 0.9 + velocity * velocity / (2 * 9.80665);
        assertThat(answer.get("flowM3h").doubleValue()).isCloseTo(5, within(1e-12));
        assertThat(answer.get("totalHeadM").doubleValue()).isCloseTo(head, within(1e-5));
        assertThat(answer.get("repeatability").isNull()).isTrue();
    }

    @Test
    void saysWhyAPumpDoesNotCycle() throws Exception {
        JsonNode dry = ask("cycling", "{\"storageM3\": 0.06, \"inflowM3h\": 0, \"pumpFlowM3h\": 6}");
        assertThat(dry.get("status").stringValue()).isEqualTo("NO_INFLOW");
        JsonNode drowned = ask("cycling", "{\"storageM3\": 0.06, \"inflowM3h\": 6, \"pumpFlowM3h\": 6}");
        assertThat(drowned.get("status").stringValue()).isEqualTo("CANNOT_KEEP_UP");
        assertThat(List.of(nulls(dry), nulls(drowned)))
                .allSatisfy(nulls ->
                        assertThat(nulls).containsExactly("cycleMinutes", "startsPerHour", "runMinutesPerCycle"));
        assertThat(dry.get("worstStartsPerHour").doubleValue()).isCloseTo(25, within(1e-12));
    }

    @Test
    void estimatesNothingFromNothing() throws Exception {
        JsonNode trend =
                ask("capacity-trend", "{\"readings\": [], \"threshold\": 0.8, \"nowHours\": 0, \"atHours\": [5]}");
        assertThat(trend.get("verdict").stringValue()).isEqualTo("TOO_FEW");
        assertThat(trend.get("n").intValue()).isZero();
        assertThat(nulls(trend))
                .containsExactly(
                        "df",
                        "intercept",
                        "slopePerHour",
                        "seIntercept",
                        "seSlope",
                        "residualSd",
                        "rSquared",
                        "slopeInterval",
                        "robust");
        JsonNode mtbf =
                ask("mtbf", "{\"totalHours\": 900, \"failures\": 0, \"termination\": \"TIME\", \"level\": 0.9}");
        assertThat(nulls(mtbf)).containsExactly("mtbfHours", "upperOneSided");
        assertThat(mtbf.get("lowerOneSided").doubleValue()).isCloseTo(900 / -Math.log(0.1), within(1e-9));
        assertThat(mtbf.get("interval").get(1).isNull()).isTrue();
        JsonNode lives = ask("lives", "{\"lives\": [{\"hours\": 5, \"failed\": false}]}");
        assertThat(lives.get("failures").intValue()).isZero();
        assertThat(lives.get("medianHours").isNull()).isTrue();
        assertThat(lives.at("/weibull/shape").isNull()).isTrue();
    }

    @Test
    void leavesOutReadingsBeforeTheLastRepair() throws Exception {
        String after =
                "{\"runHours\": 900, \"remainingFraction\": 0.98}, {\"runHours\": 1200, \"remainingFraction\": 0.97},"
                        + " {\"runHours\": 1600, \"remainingFraction\": 0.95}";
        String asked = "], \"threshold\": 0.8, \"nowHours\": 1600";
        assertThat(ask(
                        "capacity-trend",
                        "{\"readings\": [{\"runHours\": 100, \"remainingFraction\": 0.7}, " + after + asked
                                + ", \"repairHours\": [300, 850]}"))
                .isEqualTo(ask("capacity-trend", "{\"readings\": [" + after + asked + "}"));
    }

    @Test
    void reckonsTheDemandOfALeadTime() throws Exception {
        JsonNode answer =
                ask("spares", "{\"demandPerYear\": 73, \"leadDays\": 10, \"peakFactor\": 1.5, \"serviceLevel\": 0.9}");
        assertThat(answer.get("meanDemand").doubleValue()).isCloseTo(3, within(1e-12));
    }
}
