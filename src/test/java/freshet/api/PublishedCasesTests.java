package freshet.api;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import freshet.FreshetTest;
import freshet.people.People;
import java.io.InputStream;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import tools.jackson.databind.JsonNode;

/** Cases that others computed, each with its source and tolerance in its file, asked over HTTP. */
@FreshetTest
class PublishedCasesTests {

    @Autowired
    MockMvc mvc;

    @Autowired
    People people;

    @TestFactory
    Stream<DynamicTest> agreesWithHydraulics() throws Exception {
        Program program = Program.with(mvc, people);
        return cases("hydraulics-cases.json").stream()
                .map(one -> dynamicTest(
                        one.get("id").stringValue() + ": " + one.get("source").stringValue(), () -> {
                            JsonNode answer = program.ask(one.get("calculation").stringValue(), one.get("request"));
                            compare("", one.get("expected"), answer, one.get("tolerance"));
                        }));
    }

    @TestFactory
    Stream<DynamicTest> agreesWithStatistics() throws Exception {
        Program program = Program.with(mvc, people);
        return cases("statistics-cases.json").stream()
                .filter(one -> !StatisticsCase.BEYOND_THE_INTERFACE.contains(
                        one.get("id").stringValue()))
                .map(one -> dynamicTest(
                        one.get("id").stringValue() + ": " + one.get("source").stringValue(), () -> {
                            for (StatisticsCase asked : StatisticsCase.of(one)) {
                                JsonNode answer = program.ask(asked.calculation(), asked.request());
                                for (Map.Entry<String, String> pair :
                                        asked.places().entrySet()) {
                                    JsonNode expected = one.get("expected").at(pair.getKey());
                                    assertThat(expected.isMissingNode())
                                            .as(pair.getKey())
                                            .isFalse();
                                    compare(
                                            pair.getValue(),
                                            expected,
                                            answer.at(pair.getValue()),
                                            one.get("tolerance"));
                                }
                            }
                        }));
    }

    @Test
    void hasAllCasesWithTheirSources() throws Exception {
        assertThat(cases("hydraulics-cases.json")).hasSize(17);
        assertThat(cases("statistics-cases.json")).hasSize(20);
        assertThat(Stream.concat(cases("hydraulics-cases.json").stream(), cases("statistics-cases.json").stream()))
                .allSatisfy(one -> assertThat(one.get("source").stringValue()).isNotBlank());
    }

    private static List<JsonNode> cases(String name) throws Exception {
        try (InputStream file = PublishedCasesTests.class.getResourceAsStream(name)) {
            return Program.JSON.readTree(file).valueStream().toList();
        }
    }

    private static void compare(String path, JsonNode expected, JsonNode actual, JsonNode tolerance) {
        assertThat(actual).as(path).isNotNull();
        if (expected.isObject()) {
            expected.propertyStream()
                    .forEach(e -> compare(e.getKey(), e.getValue(), actual.get(e.getKey()), tolerance));
        } else if (expected.isArray()) {
            assertThat(actual.size()).as(path).isEqualTo(expected.size());
            for (int i = 0; i < expected.size(); i++) {
                compare(path, expected.get(i), actual.get(i), tolerance);
            }
        } else if (expected.isNumber()) {
            assertThat(actual.isNumber()).as(path + " is " + actual).isTrue();
            double value = expected.doubleValue();
            double relative =
                    tolerance.path(path).doubleValue(tolerance.path("rel").doubleValue(0));
            double absolute = tolerance.path("abs").doubleValue(0);
            assertThat(actual.doubleValue())
                    .as(path)
                    .isCloseTo(value, within(Math.max(relative * Math.abs(value), absolute)));
        } else if (expected.isString()) {
            assertThat(actual.stringValue())
                    .as(path)
                    .isEqualTo(StatisticsCase.WORDS.getOrDefault(expected.stringValue(), expected.stringValue()));
        } else {
            assertThat(actual).as(path).isEqualTo(expected);
        }
    }
}
