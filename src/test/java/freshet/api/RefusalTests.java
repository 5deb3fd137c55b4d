package freshet.api;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.put;

import freshet.FreshetTest;
import freshet.api.Refusal.Wrong;
import freshet.people.People;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

/** What is refused, with which status and which field. */
@FreshetTest
class RefusalTests {

    private static final String ADDRESS = "/api/v1/calculations/";
    private static final String GOOD = "{\"storageM3\": 0.06, \"inflowM3h\": 1.5, \"pumpFlowM3h\": 6}";

    private static final String PUMP = "\"curve\": [{\"flowM3h\": 0, \"headM\": 11}, {\"flowM3h\": 6, \"headM\": 7},"
            + " {\"flowM3h\": 11, \"headM\": 1}]";

    private static final String SECTION =
            "{\"innerDiameterMm\": 25.4, \"lengthM\": 15, \"roughnessMm\": 0.0015, \"lossCoefficient\": 1.2}";

    @Autowired
    MockMvc mvc;

    @Autowired
    People people;

    Program program;

    @BeforeEach
    void signUp() {
        program = Program.with(mvc, people);
    }

    private MockHttpServletResponse perform(MockHttpServletRequestBuilder request) throws Exception {
        return mvc.perform(request.header("Authorization", "Bearer " + program.token()))
                .andReturn()
                .getResponse();
    }

    @Test
    void asksForALiveToken() throws Exception {
        MockHttpServletRequestBuilder bare =
                post(ADDRESS + "cycling").contentType("application/json").content(GOOD);
        Program.problem(401, mvc.perform(bare).andReturn().getResponse());
        Program.problem(
                401,
                mvc.perform(bare.header("Authorization", "Bearer " + program.token() + "x"))
                        .andReturn()
                        .getResponse());
        assertThat(program.send("cycling", GOOD).getStatus()).isEqualTo(200);
    }

    @Test
    void knowsNoOtherName() throws Exception {
        Program.problem(404, program.send("duty-points", GOOD));
        Program.problem(404, perform(get(ADDRESS + "duty-points")));
        Program.problem(404, perform(get("/api/v1/elsewhere")));
        Program.problem(404, perform(post(ADDRESS)));
    }

    @Test
    void answersOnlyToPost() throws Exception {
        MockHttpServletResponse response = perform(get(ADDRESS + "duty-point"));
        Program.problem(405, response);
        assertThat(response.getHeader("Allow")).isEqualTo("POST");
        Program.problem(
                405,
                perform(put(ADDRESS + "duty-point")
                        .contentType("application/json")
                        .content(GOOD)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"text/plain", "application/x-www-form-urlencoded", "application/xml", "*/*", "nonsense"})
    void readsOnlyJson(String type) throws Exception {
        Program.problem(
                415,
                perform(post(ADDRESS + "cycling").header("Content-Type", type).content(GOOD)));
    }

    @Test
    void readsNothingThatIsNotDeclared() throws Exception {
        Program.problem(415, perform(post(ADDRESS + "cycling").content(GOOD)));
    }

    @Test
    void takesTheCharsetOfJsonAndAnyAccept() throws Exception {
        MockHttpServletResponse response = perform(post(ADDRESS + "cycling")
                .header("Content-Type", "application/json;charset=UTF-8")
                .header("Accept", "text/html")
                .content(GOOD));
        assertThat(response.getStatus()).isEqualTo(200);
        assertThat(response.getContentType()).isEqualTo("application/json");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                " ",
                "{",
                "{\"reynolds\": 5000, \"relativeRoughness\": 0",
                "{\"reynolds\": 5000, \"relativeRoughness\": 0}}",
                "{\"reynolds\": 5000, \"relativeRoughness\": 0} {}",
                "{\"reynolds\": NaN, \"relativeRoughness\": 0}",
                "{\"reynolds\": Infinity, \"relativeRoughness\": 0}",
                "{\"reynolds\": +5000, \"relativeRoughness\": 0}",
                "{\"reynolds\": 05000, \"relativeRoughness\": 0}",
                "{\"reynolds\": 5000., \"relativeRoughness\": 0}",
                "{'reynolds': 5000, 'relativeRoughness': 0}",
                "{\"reynolds\": 5000, \"relativeRoughness\": 0,}",
                "{\"reynolds\": 5000, /* so */ \"relativeRoughness\": 0}",
                "{\"reynolds\": 5000, \"reynolds\": 6000, \"relativeRoughness\": 0}",
                "reynolds=5000"
            })
    void callsItMalformed(String body) throws Exception {
        Program.problem(400, program.send("friction-factor", body));
    }

    @Test
    void callsBytesThatAreNoTextMalformed() throws Exception {
        Program.problem(
                400,
                program.send("friction-factor", new byte[] {'{', '"', (byte) 0xc3, (byte) 0x28, '"', ':', '1', '}'}));
    }

    @Test
    void callsDeepNestingMalformed() throws Exception {
        Program.problem(400, program.send("friction-factor", "[".repeat(100_000)));
        Program.problem(400, program.send("friction-factor", "{\"a\":".repeat(100_000)));
        Program.problem(400, program.send("friction-factor", "[".repeat(2000) + "]".repeat(2000)));
    }

    @Test
    void refusesABodyOverTwoMegabytes() throws Exception {
        String blanks = " ".repeat(CalculationController.LARGEST_BODY - GOOD.length());
        assertThat(program.send("cycling", GOOD + blanks).getStatus()).isEqualTo(200);
        Program.problem(413, program.send("cycling", GOOD + blanks + " "));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "[]                                                                    | ''",
                "5                                                                     | ''",
                "null                                                                  | ''",
                "\"{}\"                                                                | ''",
                "{\"reynolds\": 5000}                                                  | relativeRoughness",
                "{\"reynolds\": 5000, \"relativeRoughness\": null}                     | relativeRoughness",
                "{\"reynolds\": \"5000\", \"relativeRoughness\": 0}                    | reynolds",
                "{\"reynolds\": \"NaN\", \"relativeRoughness\": 0}                     | reynolds",
                "{\"reynolds\": true, \"relativeRoughness\": 0}                        | reynolds",
                "{\"reynolds\": [5000], \"relativeRoughness\": 0}                      | reynolds",
                "{\"reynolds\": {}, \"relativeRoughness\": 0}                          | reynolds",
                "{\"reynolds\": 1e400, \"relativeRoughness\": 0}                       | reynolds",
                "{\"reynolds\": -1e400, \"relativeRoughness\": 0}                      | reynolds",
                "{\"reynolds\": 0, \"relativeRoughness\": 0}                           | reynolds",
                "{\"reynolds\": 5000, \"relativeRoughness\": 0.51}                     | relativeRoughness",
                "{\"reynolds\": 5000, \"relativeRoughness\": 0, \"roughness\": 1}      | roughness",
                "{\"reynolds\": 5000, \"relativeRoughness\": 0, \"Reynolds\": 1}       | Reynolds",
                "{\"reynolds\": 5000, \"relativeRoughness\": 0, \"\": 1}               | ''",
            })
    void namesTheFieldThatIsRefused(String body, String field) throws Exception {
        assertThat(program.refused("friction-factor", body)).singleElement().satisfies(wrong -> {
            assertThat(wrong.field()).isEqualTo(field);
            assertThat(wrong.message()).isNotBlank();
        });
    }

    @Test
    void takesNumbersOfManyDigitsAsTheirNearestDouble() throws Exception {
        String digits = "5000." + "0".repeat(300) + "1";
        assertThat(program.send("friction-factor", "{\"reynolds\": " + digits + ", \"relativeRoughness\": 0}")
                        .getStatus())
                .isEqualTo(200);
        String huge = "9".repeat(400);
        assertThat(fields("friction-factor", "{\"reynolds\": " + huge + ", \"relativeRoughness\": 0}"))
                .containsExactly("reynolds");
    }

    private List<String> fields(String name, String body) throws Exception {
        return program.refused(name, body).stream().map(Wrong::field).toList();
    }

    private static String duty(String line) {
        return "{" + PUMP + ", \"line\": " + line + "}";
    }

    @Test
    void namesValueUnitAndLimit() throws Exception {
        String thin = SECTION.replace("25.4", "1e-12");
        assertThat(program.refused("duty-point", duty("{\"liftM\": 4, \"sections\": [" + thin + "]}")))
                .containsExactly(new Wrong(
                        "line.sections[0].innerDiameterMm", "1.0E-12 mm is outside; it must lie from 0.5 to 5000 mm"));
    }

    @Test
    void gathersAllThatDoesNotFit() throws Exception {
        String body = "{\"curve\": [{\"flowM3h\": 0, \"headM\": \"11\"}, {\"flowM3h\": 6}], \"lift\": 3, \"line\":"
                + " {\"liftM\": 6000, \"sections\": [" + SECTION + ", "
                + SECTION.replace("\"lengthM\": 15", "\"lengthM\": -1") + "]}}";
        assertThat(fields("duty-point", body))
                .containsExactlyInAnyOrder(
                        "curve[0].headM", "curve[1].headM", "lift", "line.liftM", "line.sections[1].lengthM");
    }

    @Test
    void stopsCountingWrongsWhereTheyHelpNobody() throws Exception {
        String body = "{\"lives\": [" + "{}, ".repeat(50_000) + "{}]}";
        assertThat(program.refused("lives", body)).hasSize(50);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0 11, 6 7, 5 6     | curve[2].flowM3h",
                "0 11, 6 7, 6 6     | curve[2].flowM3h",
                "0 9, 3 9.5, 6 7    | curve[1].headM",
                "0 9, 3 9, 6 7      | curve[1].headM",
                "1 9, 6 7           | curve[0].flowM3h",
                "0 9, 6 -1          | curve[1].headM",
                "0 9                | curve",
                "''                 | curve",
            })
    void refusesACurveThatIsNone(String points, String field) throws Exception {
        String curve = points.isEmpty()
                ? ""
                : List.of(points.split(", ")).stream()
                        .map(point -> "{\"flowM3h\": " + point.replace(" ", ", \"headM\": ") + "}")
                        .collect(Collectors.joining(", "));
        assertThat(fields("affinity", "{\"curve\": [" + curve + "], \"speedRatio\": 1.1}"))
                .containsExactly(field);
    }

    @Test
    void saysWhereACurveHasItsHump() throws Exception {
        String curve =
                "[{\"flowM3h\": 0, \"headM\": 9}, {\"flowM3h\": 3, \"headM\": 9.5}, {\"flowM3h\": 6, \"headM\": 7}]";
        assertThat(program.refused("affinity", "{\"curve\": " + curve + ", \"speedRatio\": 1.1}"))
                .singleElement()
                .satisfies(wrong -> assertThat(wrong.message())
                        .contains("9.5 m")
                        .contains("3 m³/h")
                        .contains("9 m"));
    }

    @Test
    void takesFortyPointsAndNoMore() throws Exception {
        assertThat(program.send("affinity", "{\"curve\": " + points(40) + ", \"speedRatio\": 1.1}")
                        .getStatus())
                .isEqualTo(200);
        assertThat(fields("affinity", "{\"curve\": " + points(41) + ", \"speedRatio\": 1.1}"))
                .containsExactly("curve");
    }

    private static String points(int n) {
        return IntStream.range(0, n)
                .mapToObj(i -> "{\"flowM3h\": " + i + ", \"headM\": " + (100 - i) + "}")
                .collect(Collectors.joining(",", "[", "]"));
    }

    @Test
    void takesTwentySectionsAndNoMore() throws Exception {
        String twenty = String.join(",", java.util.Collections.nCopies(20, SECTION));
        assertThat(program.send("duty-point", duty("{\"liftM\": 4, \"sections\": [" + twenty + "]}"))
                        .getStatus())
                .isEqualTo(200);
        assertThat(fields("duty-point", duty("{\"liftM\": 4, \"sections\": [" + twenty + "," + SECTION + "]}")))
                .containsExactly("line.sections");
    }

    @Test
    void takesOneOfRoughnessAndHazenWilliams() throws Exception {
        String both = SECTION.replace("\"lengthM\"", "\"hazenWilliamsC\": 140, \"lengthM\"");
        assertThat(fields("duty-point", duty("{\"liftM\": 4, \"sections\": [" + both + "]}")))
                .containsExactly("line.sections[0].hazenWilliamsC");
        String none = SECTION.replace("\"roughnessMm\": 0.0015, ", "");
        assertThat(fields("duty-point", duty("{\"liftM\": 4, \"sections\": [" + none + "]}")))
                .containsExactly("line.sections[0].roughnessMm");
    }

    @Test
    void takesALiftBelowTheWaterAndALineWithoutSections() throws Exception {
        assertThat(program.ask("duty-point", Program.JSON.readTree(duty("{\"liftM\": -2, \"sections\": []}")))
                        .get("status")
                        .stringValue())
                .isEqualTo("BEYOND_CURVE");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "                                                                       | line",
                ", \"gaugeKPa\": 40                                                     | gaugeAboveWaterM",
                ", \"gaugeKPa\": 40, \"line\": {\"liftM\": 3, \"sections\": []}         | gaugeKPa",
                ", \"waterTemperatureC\": 9, \"line\": {\"liftM\": 3, \"sections\": []} | waterTemperatureC",
                ", \"line\": {\"liftM\": 30, \"sections\": []}                          | line.liftM",
                ", \"line\": {\"liftM\": -30, \"sections\": []}                         | line.liftM",
            })
    void needsTheLineOrTheGaugeOfAFlowTest(String head, String field) throws Exception {
        String body = "{" + PUMP + ", \"containerL\": 60, \"containerUncertaintyL\": 0.5, \"seconds\": [36, 37],"
                + " \"timingUncertaintyS\": 0.2, \"liftUncertaintyM\": 0.03" + (head == null ? "" : head) + "}";
        assertThat(fields("flow-test", body)).containsExactly(field);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{\"serviceLevel\": 0.9}                                               | demandPerYear",
                "{\"serviceLevel\": 0.9, \"demandPerYear\": 3, \"leadDays\": 9}        | peakFactor",
                "{\"serviceLevel\": 0.9, \"meanDemand\": 3, \"leadDays\": 9}           | leadDays",
                "{\"serviceLevel\": 1, \"meanDemand\": 3}                              | serviceLevel",
            })
    void needsOneWayToSayTheDemandForSpares(String body, String field) throws Exception {
        assertThat(fields("spares", body)).containsExactly(field);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"failures\": 1.5, \"termination\": \"TIME\"       | failures",
                "\"failures\": \"1\", \"termination\": \"TIME\"     | failures",
                "\"failures\": -1, \"termination\": \"TIME\"        | failures",
                "\"failures\": 3e9, \"termination\": \"TIME\"       | failures",
                "\"failures\": 0, \"termination\": \"FAILURE\"      | failures",
                "\"failures\": 1, \"termination\": \"time\"         | termination",
                "\"failures\": 1, \"termination\": 0                | termination",
                "\"failures\": 1                                    | termination",
            })
    void takesWholeNumbersAndWordsAsTheyAre(String fields, String field) throws Exception {
        assertThat(fields("mtbf", "{\"totalHours\": 900, " + fields + "}")).containsExactly(field);
    }

    @Test
    void takesTrueAndFalseOnly() throws Exception {
        assertThat(fields(
                        "lives", "{\"lives\": [{\"hours\": 5, \"failed\": 1}, {\"hours\": 5, \"failed\": \"true\"}]}"))
                .containsExactly("lives[0].failed", "lives[1].failed");
    }

    @Test
    void namesWhatTheStoneOfReliabilityRefuses() throws Exception {
        assertThat(program.refused(
                        "lives", "{\"lives\": [{\"hours\": 5, \"failed\": true, \"entryHours\": 6}], \"level\": 0.9}"))
                .containsExactly(new Wrong("lives[0].entryHours", "6 h is not below the life's 5 h"));
    }

    @Test
    void refusesNullInAList() throws Exception {
        assertThat(fields("failure-trend", "{\"eventHours\": [5, null], \"endHours\": 9, \"termination\": \"TIME\"}"))
                .containsExactly("eventHours[1]");
    }

    @Test
    void takesNullForWhatMayBeLeftOut() throws Exception {
        String body = duty("{\"liftM\": 4, \"pumpOutletMm\": null, \"waterTemperatureC\": null, \"sections\": []}");
        assertThat(program.send("duty-point", body).getStatus()).isEqualTo(200);
    }

    @Test
    void repeatsAStrangersWordsCutAndHarmless() throws Exception {
        String halfOfAPair = "\\ud800";
        List<Wrong> wrongs = program.refused(
                "friction-factor",
                "{\"reynolds\": \"" + halfOfAPair + "\\u0000" + "x".repeat(5000)
                        + "\", \"relativeRoughness\": 0, \"\\u0000" + "y".repeat(5000) + "\": 1}");
        assertThat(wrongs).hasSize(2).allSatisfy(wrong -> {
            assertThat(wrong.field()).hasSizeLessThan(60).doesNotContain("\u0000");
            assertThat(wrong.message()).hasSizeLessThan(200).doesNotContain("\u0000");
        });
    }
}
