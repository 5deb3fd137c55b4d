package freshet.hydraulics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.stream.Stream;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.JsonNode;

/** Every reference case, one file each with its source: the room's answer agrees within the file's tolerance. */
class ReferenceCasesTests {

    static Stream<Named<JsonNode>> cases() throws IOException {
        return Cases.all().stream()
                .map(c -> Named.of(
                        c.get("id").stringValue() + ": " + c.get("title").stringValue(), c));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void agreesWithItsSource(JsonNode reference) {
        assertThat(reference.get("expected").isEmpty()).isFalse();
        JsonNode answer = Cases.answer(reference.get("calculation").stringValue(), reference.get("request"));
        compare("", reference.get("expected"), answer, reference.get("tolerance"));
    }

    @Test
    void everyCaseNamesItsSourceAndMark() throws IOException {
        assertThat(Cases.all()).isNotEmpty().allSatisfy(c -> {
            assertThat(c.get("source").stringValue()).isNotBlank();
            assertThat(c.get("mark").stringValue()).isNotBlank();
        });
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
            double value = expected.doubleValue();
            double relative =
                    tolerance.path(path).doubleValue(tolerance.path("rel").doubleValue(0));
            double absolute = tolerance.path("abs").doubleValue(0);
            assertThat(actual.doubleValue())
                    .as(path)
                    .isCloseTo(value, within(Math.max(relative * Math.abs(value), absolute)));
        } else {
            assertThat(actual).as(path).isEqualTo(expected);
        }
    }
}
