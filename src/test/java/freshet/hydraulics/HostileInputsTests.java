package freshet.hydraulics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Whatever number stands in a request, the answer is a clear refusal or finite numbers, and it comes at once. */
class HostileInputsTests {

    private static final double[] HOSTILE = {
        0,
        -0.0,
        -1,
        1,
        1e-12,
        1e-3,
        1e3,
        1e6,
        1e12,
        1e308,
        -1e308,
        4.9e-324,
        1e-300,
        Double.NaN,
        Double.POSITIVE_INFINITY,
        Double.NEGATIVE_INFINITY
    };

    static Stream<Named<JsonNode>> cases() throws IOException {
        return Cases.all().stream().map(c -> Named.of(c.get("id").stringValue(), c));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void standsOneBadNumber(JsonNode reference) {
        String calculation = reference.get("calculation").stringValue();
        int leaves = leaves(reference.get("request")).size();
        Assertions.assertTimeout(Duration.ofSeconds(10), () -> {
            for (int leaf = 0; leaf < leaves; leaf++) {
                for (double hostile : HOSTILE) {
                    JsonNode request = reference.get("request").deepCopy();
                    leaves(request).get(leaf).put(hostile);
                    judge(calculation, request);
                }
            }
        });
    }

    @ParameterizedTest
    @MethodSource("cases")
    void standsSeveralBadNumbers(JsonNode reference) {
        String calculation = reference.get("calculation").stringValue();
        Yard yard = new Yard(reference.get("id").stringValue().hashCode());
        Assertions.assertTimeout(Duration.ofSeconds(10), () -> {
            for (int round = 0; round < 300; round++) {
                JsonNode request = reference.get("request").deepCopy();
                List<Leaf> leaves = leaves(request);
                for (int i = 0; i < yard.count(2, 4); i++) {
                    Leaf leaf = leaves.get(yard.count(0, leaves.size() - 1));
                    leaf.put(
                            yard.count(0, 2) == 0
                                    ? HOSTILE[yard.count(0, HOSTILE.length - 1)]
                                    : leaf.get() * yard.around(1e-3, 1e3));
                }
                judge(calculation, request);
            }
        });
    }

    private static void judge(String calculation, JsonNode request) {
        try {
            JsonNode answer = Cases.answer(calculation, request);
            for (Leaf leaf : leaves(answer)) {
                assertThat(leaf.get()).as(request + " gives " + answer).isFinite();
            }
        } catch (OutOfRange refused) {
            assertThat(refused.field()).isNotNull();
            assertThat(refused.getMessage()).as(request.toString()).isNotBlank();
        }
    }

    /** A number in a tree that can be read and replaced. */
    private interface Leaf {
        double get();

        void put(double value);
    }

    private static List<Leaf> leaves(JsonNode tree) {
        List<Leaf> found = new ArrayList<>();
        if (tree instanceof ObjectNode object) {
            for (String name : object.propertyNames()) {
                if (object.get(name).isNumber()) {
                    found.add(leaf(() -> object.get(name), v -> object.put(name, v)));
                } else {
                    found.addAll(leaves(object.get(name)));
                }
            }
        } else if (tree instanceof ArrayNode array) {
            for (int i = 0; i < array.size(); i++) {
                int at = i;
                if (array.get(i).isNumber()) {
                    found.add(leaf(() -> array.get(at), v -> array.set(at, v)));
                } else {
                    found.addAll(leaves(array.get(i)));
                }
            }
        }
        return found;
    }

    private static Leaf leaf(java.util.function.Supplier<JsonNode> read, java.util.function.DoubleConsumer write) {
        return new Leaf() {
            @Override
            public double get() {
                return read.get().doubleValue();
            }

            @Override
            public void put(double value) {
                write.accept(value);
            }
        };
    }

    @Test
    void namesTheSectionAndItsLimit() {
        assertThatThrownBy(() -> OutOfRange.within(
                        "line", () -> Line.of(4, Section.rough(25.4, 15, 0.01, 1), Section.rough(1e-12, 15, 0, 1))))
                .isInstanceOfSatisfying(OutOfRange.class, e -> {
                    assertThat(e.field()).isEqualTo("line.sections[1].innerDiameterMm");
                    assertThat(e.reason()).isEqualTo(OutOfRange.Reason.RANGE);
                })
                .hasMessage("innerDiameterMm is 1.0E-12 mm; it must lie from 0.5 to 5000 mm");
    }

    @Test
    void wantsOneOfTheTwoRoughnesses() {
        assertThatThrownBy(() -> Line.of(4, new Section(25, 1, null, null, 0)))
                .isInstanceOfSatisfying(OutOfRange.class, e -> {
                    assertThat(e.field()).isEqualTo("sections[0].roughnessMm");
                    assertThat(e.reason()).isEqualTo(OutOfRange.Reason.MISSING);
                });
        assertThatThrownBy(() -> Line.of(4, new Section(25, 1, 0.1, 140.0, 0)))
                .isInstanceOfSatisfying(
                        OutOfRange.class, e -> assertThat(e.reason()).isEqualTo(OutOfRange.Reason.CONFLICT));
        assertThatThrownBy(() -> Line.of(4, Section.rough(1, 1, 0.6, 0))).hasMessageContaining("0.5 mm");
    }

    @Test
    void takesTwentySectionsAndNotOneMore() {
        Section section = Section.rough(25.4, 2, 0.01, 0.3);
        Curve curve = CurveTests.curve(0, 12, 5, 1);
        DutyPoint duty = DutyPoint.of(curve, new Line(1, 15, 31.75, 1, Collections.nCopies(20, section)));
        assertThat(duty.sections()).hasSize(20);
        assertThatThrownBy(() -> new Line(1, 15, null, 1, Collections.nCopies(21, section)))
                .hasMessageContaining("21 sections");
    }

    @Test
    void solvesCurvesThatAreNearlyLevelOrNearlySheer() {
        Line line = Line.of(1, Section.rough(25.4, 10, 0.01, 1));
        Curve level = CurveTests.curve(0, 10.000001, 5, 10, 10, 9.999999);
        assertThat(DutyPoint.of(level, line).status()).isEqualTo(DutyPoint.Status.OK);
        Curve sheer = CurveTests.curve(0, 5000, 1e-6, 1e-9, 1, 1e-10, 2, 0);
        assertThat(DutyPoint.of(sheer, line).flowM3h()).isBetween(0.0, 1e-6);
        Curve stepped = CurveTests.curve(0, 10, 1, 9.9999999999, 1.000001, 0.0000001, 100, 0);
        DutyPoint duty = DutyPoint.of(stepped, line);
        assertThat(duty.flowM3h()).isBetween(1.0, 1.000001);
    }

    @Test
    void answersTheExtremesOfTheLimits() {
        Curve curve = CurveTests.curve(0, 12, 5, 0);
        DutyPoint hair = DutyPoint.of(curve, Line.of(0, Section.rough(0.5, 100_000, 0.25, 1e6)));
        assertThat(hair.flowM3h()).isPositive().isLessThan(1e-6);
        LineLoss torrent = LineLoss.of(Line.of(0, Section.rough(0.5, 100_000, 0.25, 1e6)), 100_000);
        assertThat(torrent.headM()).isFinite().isPositive();
        LineLoss still = LineLoss.of(Line.of(2, Section.rough(25, 10, 0, 1), Section.hazenWilliams(25, 1, 140, 0)), 0);
        assertThat(still.headM()).isEqualTo(2);
        assertThat(still.sections().get(0).frictionFactor()).isNull();
    }
}
