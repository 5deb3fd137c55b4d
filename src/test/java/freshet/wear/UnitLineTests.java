package freshet.wear;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import freshet.findings.Finding;
import freshet.readings.ComparedTest;
import freshet.readings.MeterLog;
import freshet.reliability.HoursToThreshold;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class UnitLineTests {

    private static final MeterLog LOG = Logs.log(
            "2024-04-01T12:00:00Z", 161,
            "2024-06-01T12:00:00Z", 240,
            "2024-08-01T12:00:00Z", 395,
            "2024-10-01T12:00:00Z", 450,
            "2025-04-01T12:00:00Z", 600);

    private static final List<ComparedTest> TESTS = List.of(
            Logs.test("2024-04-01T12:00:00Z", 0.985, 0.010),
            Logs.test("2024-06-01T12:00:00Z", 0.962, 0.012),
            Logs.test("2024-08-01T12:00:00Z", 0.925, 0.010),
            Logs.test("2024-10-01T12:00:00Z", 0.917, 0.011),
            Logs.test("2025-04-01T12:00:00Z", 0.868, 0.009));

    private static UnitLine line(List<ComparedTest> tests, MeterLog log, Finding... findings) {
        return UnitLine.of(tests, log, List.of(findings), WearQuestion.USUAL);
    }

    private static List<Tested.Use> uses(UnitLine line) {
        return line.tests().stream().map(Tested::use).toList();
    }

    @Test
    void agreesWithAnotherProgramOnTheSameTests() {
        // numpy 2.4.6 lstsq on the weighted design, scipy 1.17.1 t.ppf, the bounds by brentq on the bands themselves
        UnitLine line = line(TESTS, LOG);
        assertThat(line.word()).isEqualTo(WearWord.WEARING);
        assertThat(line.trend().slopePerHour()).isCloseTo(-2.60963716e-4, within(1e-12));
        assertThat(line.trend().intercept()).isCloseTo(1.02754770, within(1e-8));
        assertThat(line.trend().seSlope()).isCloseTo(1.22586333e-5, within(1e-13));
        assertThat(line.trend().residualSd())
                .as("of a usual test, whose uncertainty is the median")
                .isCloseTo(0.0043415668733619165, within(1e-9));
        assertThat(line.errorAsStated()).isCloseTo(2.8235504949614585e-05, within(1e-12));
        HoursToThreshold to = line.trend().hoursToThreshold();
        assertThat(to.estimate()).isCloseTo(871.9514981914893, within(1e-5));
        assertThat(to.lowerOneSided()).isCloseTo(820.6505314659163, within(1e-3));
        assertThat(to.interval().lower()).isCloseTo(804.7929256175739, within(1e-3));
        assertThat(to.interval().upper()).isCloseTo(961.3299127268915, within(1e-3));
        assertThat(line.slope().standardError()).as("the larger of the two").isEqualTo(line.errorAsStated());
    }

    @Test
    void doesNotCallALuckyLineWearWhenTheTestsThemselvesAreLessSure() {
        // on one line to the last digit, but 2 % lost by tests of ±4 % each
        List<ComparedTest> lucky = List.of(
                Logs.test("2024-04-01T12:00:00Z", 1 - 161e-5, 0.02),
                Logs.test("2024-06-01T12:00:00Z", 1 - 240e-5 + 1e-7, 0.02),
                Logs.test("2024-10-01T12:00:00Z", 1 - 450e-5, 0.02));
        UnitLine line = line(lucky, LOG);
        assertThat(line.trend().slopeInterval().upper()).isNegative();
        assertThat(line.word()).isEqualTo(WearWord.WITHIN_DOUBT);
    }

    @Test
    void neverCallsFewTestsOrScatterWear() {
        assertThat(line(List.of(), LOG).word()).isEqualTo(WearWord.NOTHING);
        assertThat(line(TESTS.subList(0, 2), LOG).word()).isEqualTo(WearWord.TOO_FEW);
        List<ComparedTest> scattered = List.of(
                Logs.test("2024-04-01T12:00:00Z", 0.95, 0.02),
                Logs.test("2024-06-01T12:00:00Z", 1.0, 0.02),
                Logs.test("2024-10-01T12:00:00Z", 0.93, 0.02));
        assertThat(line(scattered, LOG).word()).isEqualTo(WearWord.NO_TREND_YET);
        List<ComparedTest> atOneReading = List.of(
                Logs.test("2024-04-01T12:00:00Z", 0.95, 0.02),
                Logs.test("2024-04-01T12:00:00Z", 0.94, 0.02),
                Logs.test("2024-04-01T12:00:00Z", 0.93, 0.02));
        UnitLine upright = line(atOneReading, LOG);
        assertThat(upright.word()).isEqualTo(WearWord.NO_TREND_YET);
        assertThat(upright.trend().slopePerHour()).isNull();
        assertThat(upright.slope()).isNull();
    }

    @Test
    void leavesOutTestsFromBeforeTheLastRepair() {
        UnitLine line = line(
                TESTS,
                LOG,
                Logs.finding(3, "2024-06-02T00:00:00Z", "2024-06-10T00:00:00Z"),
                Logs.finding(2, "2024-04-02T00:00:00Z", "2024-04-10T00:00:00Z"),
                Logs.finding(1, "2024-09-02T00:00:00Z", "2024-09-10T00:00:00Z"),
                Logs.finding(4, "2024-09-02T00:00:00Z", null));
        assertThat(uses(line))
                .containsExactly(
                        Tested.Use.BEFORE_REPAIR,
                        Tested.Use.BEFORE_REPAIR,
                        Tested.Use.COUNTS,
                        Tested.Use.COUNTS,
                        Tested.Use.COUNTS);
        assertThat(line.repairs()).hasSize(2);
        assertThat(line.restart().finding().severity()).isEqualTo(3);
        assertThat(line.restart().hours().hours()).isBetween(240.0, 395.0);
        assertThat(line.trend().n()).isEqualTo(3);
        UnitLine through = UnitLine.of(
                TESTS,
                LOG,
                List.of(Logs.finding(3, "2024-06-02T00:00:00Z", "2024-06-10T00:00:00Z")),
                new WearQuestion(0.8, false, true));
        assertThat(through.trend().n()).isEqualTo(5);
        assertThat(through.restart()).isNull();
        assertThat(through.repairs()).hasSize(1);
    }

    @Test
    void tellsTheSidesOfARepairApartOnOneDayAtOneMeterReading() {
        List<ComparedTest> sameDay = List.of(
                Logs.test("2024-04-01T09:00:00Z", 0.80, 0.01),
                Logs.test("2024-04-01T11:00:00Z", 0.81, 0.01),
                Logs.test("2024-04-01T14:00:00Z", 0.99, 0.01));
        UnitLine line = line(sameDay, LOG, Logs.finding(2, "2024-04-01T09:30:00Z", "2024-04-01T12:30:00Z"));
        assertThat(uses(line)).containsExactly(Tested.Use.BEFORE_REPAIR, Tested.Use.BEFORE_REPAIR, Tested.Use.COUNTS);
    }

    @Test
    void doesNotRestartWhereNothingWasTestedBeforeTheRepair() {
        UnitLine line = line(TESTS, LOG, Logs.finding(2, "2023-04-01T09:30:00Z", "2023-04-01T12:30:00Z"));
        assertThat(line.restart()).isNull();
        assertThat(line.repairs()).hasSize(1);
        assertThat(line.repairs().get(0).hours()).isNull();
        assertThat(line.trend().n()).isEqualTo(5);
    }

    @Test
    void leavesOutTestsWithoutHoursOrWithoutAFraction() {
        List<ComparedTest> mixed = List.of(
                Logs.test("2023-01-01T12:00:00Z", 1.0, 0.01),
                Logs.test("2024-04-01T12:00:00Z", 0.99, 0.01),
                Logs.test("2024-06-01T12:00:00Z", null, null),
                Logs.test("2026-01-01T12:00:00Z", 0.7, 0.01));
        UnitLine line = line(mixed, LOG);
        assertThat(uses(line))
                .containsExactly(Tested.Use.NO_HOURS, Tested.Use.COUNTS, Tested.Use.NO_FRACTION, Tested.Use.NO_HOURS);
        assertThat(line.word()).isEqualTo(WearWord.TOO_FEW);
        assertThat(uses(line(TESTS, null))).containsOnly(Tested.Use.NO_HOURS);
        assertThat(line(TESTS, null).word()).isEqualTo(WearWord.NOTHING);
    }

    @Test
    void drawsAUnitTowardsThoseOfItsModel() {
        // two tests only: expected to wear as the others do, -2e-4, -3e-4 and -4e-4 with one error s:
        // tau2 = 1e-8 - s², the error of another sqrt(tau2 + (s² + tau2)/3)
        Map<Long, UnitLine> lines = new LinkedHashMap<>();
        lines.put(1L, line(TESTS.subList(0, 2), LOG));
        for (int i = 2; i <= 4; i++) {
            lines.put((long) i, line(falling(i * 1e-4), LOG));
        }
        double s = lines.get(2L).slope().standardError();
        Pooled pooled = Pooled.of(1, lines, WearQuestion.USUAL);
        assertThat(pooled.own()).isFalse();
        assertThat(pooled.lines()).isEqualTo(3);
        assertThat(pooled.slope().slopePerHour()).isCloseTo(-3e-4, within(1e-9));
        double tau2 = 1e-8 - s * s;
        assertThat(pooled.slope().standardError()).isCloseTo(Math.sqrt(tau2 + 1e-8 / 3), within(1e-8));
        // from the weighted middle of its two tests, weights 1/0.01² and 1/0.012²
        double w = 1 / (0.01 * 0.01);
        double v = 1 / (0.012 * 0.012);
        double middle = (161 * w + 240 * v) / (w + v);
        double there = (0.985 * w + 0.962 * v) / (w + v);
        assertThat(pooled.reachesHours()).isCloseTo(middle + (there - 0.8) / 3e-4, within(0.01));

        Pooled own = Pooled.of(2, lines, WearQuestion.USUAL);
        double ofMean = s * s / 1e-8;
        assertThat(own.own()).isTrue();
        assertThat(own.slope().weightOfMean()).isCloseTo(ofMean, within(1e-4));
        assertThat(own.slope().slopePerHour()).isCloseTo(-3e-4 + (1 - ofMean) * 1e-4, within(1e-8));
        lines.remove(4L);
        assertThat(Pooled.of(1, lines, WearQuestion.USUAL)).isNull();
    }

    private static List<ComparedTest> falling(double perHour) {
        return List.of(
                Logs.test("2024-04-01T12:00:00Z", 1 - 161 * perHour, 0.01),
                Logs.test("2024-08-01T12:00:00Z", 1 - 395 * perHour, 0.01),
                Logs.test("2025-04-01T12:00:00Z", 1 - 600 * perHour, 0.01));
    }
}
