package freshet.reliability;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CapacityTrendTests {

    private static final double LEVEL = 0.95;

    private static CapacityTrend trend(List<CapacityReading> readings) {
        return CapacityTrend.of(readings, List.of(), 0.7, 3000, LEVEL, List.of(0.0, 2500.0));
    }

    private static CapacityReading reading(double hours, double fraction) {
        return new CapacityReading(hours, fraction);
    }

    static List<CapacityReading> wearing(long seed, int n) {
        Random random = new Random(seed);
        List<CapacityReading> readings = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            double hours = 3000 * random.nextDouble();
            readings.add(reading(hours, 1 - 8e-5 * hours + 0.02 * random.nextGaussian()));
        }
        return readings;
    }

    @Test
    void knowsTheErrorOfASlopeFromWhatTheReadingsState() {
        // three readings of 0.02 at 0, 100 and 200 h: w = 2500, sum of squares about 100 h is 20 000
        List<CapacityReading> exact = List.of(
                new CapacityReading(0, 1, 0.02),
                new CapacityReading(100, 0.99, 0.02),
                new CapacityReading(200, 0.98, 0.02));
        assertThat(CapacityReading.slopeErrorAsStated(exact)).isCloseTo(0.02 / Math.sqrt(20_000), within(1e-15));
        // a perfect line: the scatter alone would call the smallest fall wear
        assertThat(CapacityTrend.of(exact, List.of(), 0.8, 200, 0.95, List.of()).verdict())
                .isEqualTo(CapacityTrend.Verdict.WEARING);
        assertThat(1e-4 / CapacityReading.slopeErrorAsStated(exact)).isLessThan(1);
        // weights: at 0 and 100 h with 0.01 and 0.02 the sum of squares is 10 000/(0.01² + 0.02²)
        assertThat(CapacityReading.slopeErrorAsStated(
                        List.of(new CapacityReading(0, 1, 0.01), new CapacityReading(100, 0.9, 0.02))))
                .isCloseTo(Math.hypot(0.01, 0.02) / 100, within(1e-15));
        assertThat(CapacityReading.slopeErrorAsStated(
                        List.of(new CapacityReading(0, 1, 0.01), new CapacityReading(100, 0.9))))
                .isNull();
        assertThat(CapacityReading.slopeErrorAsStated(
                        List.of(new CapacityReading(5, 1, 0.01), new CapacityReading(5, 0.9, 0.01))))
                .isNull();
        assertThat(CapacityReading.slopeErrorAsStated(List.of())).isNull();
    }

    @Test
    void saysNothingAboutNoReading() {
        CapacityTrend trend = trend(List.of());
        assertThat(trend.verdict()).isEqualTo(CapacityTrend.Verdict.TOO_FEW);
        assertThat(trend.n()).isZero();
        assertThat(trend.df()).isNull();
        assertThat(trend.slopePerHour()).isNull();
        assertThat(trend.robust()).isNull();
        assertThat(trend.hoursToThreshold().status()).isNull();
        assertThat(trend.at()).hasSize(2).allSatisfy(at -> assertThat(at.fit()).isNull());
    }

    @Test
    void drawsNoLineThroughReadingsOfTheSameHours() {
        CapacityTrend trend = trend(List.of(reading(500, 0.9), reading(500, 0.8), reading(500, 0.85)));
        assertThat(trend.verdict()).isEqualTo(CapacityTrend.Verdict.NO_TREND_YET);
        assertThat(trend.n()).isEqualTo(3);
        assertThat(trend.slopePerHour()).isNull();
        assertThat(trend.hoursToThreshold()).isEqualTo(HoursToThreshold.UNKNOWN);
    }

    @Test
    void seesNoTrendInEqualReadings() {
        CapacityTrend trend =
                trend(List.of(reading(0, 0.9), reading(700, 0.9), reading(1100, 0.9), reading(1500, 0.9)));
        assertThat(trend.verdict()).isEqualTo(CapacityTrend.Verdict.NO_TREND_YET);
        assertThat(trend.slopePerHour()).isZero();
        assertThat(trend.rSquared()).isNull();
        assertThat(trend.hoursToThreshold().status()).isEqualTo(HoursToThreshold.Status.NOT_DECLINING);
        assertThat(trend.hoursToThreshold().estimate()).isNull();
        assertThat(trend.hoursToThreshold().lowerOneSided()).isNull();
    }

    @Test
    void twoReadingsGiveALineAndAnEstimateButNoError() {
        CapacityTrend trend = trend(List.of(reading(1000, 0.9), reading(2000, 0.8)));
        assertThat(trend.verdict()).isEqualTo(CapacityTrend.Verdict.TOO_FEW);
        assertThat(trend.hoursToThreshold().estimate()).isCloseTo(3000, within(1e-6));
        assertThat(trend.hoursToThreshold().status()).isNull();
        assertThat(trend.hoursToThreshold().remainingLower()).isNull();
        assertThat(trend.robust().slopePerHour()).isCloseTo(-1e-4, within(1e-15));
        assertThat(trend.robust().slopeInterval()).isNull();
        assertThat(trend.at().get(1))
                .isEqualTo(new CapacityTrend.At(2500, trend.at().get(1).fit(), null, null, null, null, null));
    }

    @Test
    void aPerfectLineMeetsTheThresholdSurely() {
        CapacityTrend trend = trend(List.of(reading(0, 1), reading(1024, 0.875), reading(2048, 0.75)));
        assertThat(trend.verdict()).isEqualTo(CapacityTrend.Verdict.WEARING);
        HoursToThreshold hours = trend.hoursToThreshold();
        assertThat(hours.status()).isEqualTo(HoursToThreshold.Status.OK);
        assertThat(hours.lowerOneSided()).isCloseTo(hours.estimate(), within(1e-6));
        assertThat(hours.interval().upper()).isCloseTo(hours.estimate(), within(1e-6));
        assertThat(hours.remainingEstimate()).isZero();
    }

    @Test
    void startsAfreshAtTheLastRepair() {
        List<CapacityReading> old = wearing(7, 12);
        List<CapacityReading> renewed = List.of(
                reading(4000, 0.99), reading(4300, 0.97), reading(4700, 0.93), reading(5200, 0.9), reading(5500, 0.88));
        List<CapacityReading> all = new ArrayList<>(old);
        all.addAll(renewed);
        CapacityTrend since = CapacityTrend.of(all, List.of(4000.0, 1500.0), 0.7, 5500, LEVEL, List.of());
        assertThat(since).isEqualTo(CapacityTrend.of(renewed, List.of(), 0.7, 5500, LEVEL, List.of()));
        assertThat(since.n()).isEqualTo(5);
        assertThat(since.verdict()).isEqualTo(CapacityTrend.Verdict.WEARING);
    }

    @Test
    void weighsOnlyWhenEveryReadingUsedStatesItsUncertainty() {
        List<CapacityReading> readings = List.of(
                new CapacityReading(0, 1, 0.01),
                new CapacityReading(800, 0.95, 0.02),
                new CapacityReading(1500, 0.88, 0.01),
                new CapacityReading(2100, 0.86, null));
        List<CapacityReading> plain = readings.stream()
                .map(r -> reading(r.runHours(), r.remainingFraction()))
                .toList();
        assertThat(trend(readings)).isEqualTo(trend(plain));
        assertThat(trend(readings.subList(0, 3)).slopePerHour())
                .isNotEqualTo(trend(plain.subList(0, 3)).slopePerHour());
    }

    @Test
    void usualUncertaintiesChangeOnlyTheScaleOfOneReading() {
        List<CapacityReading> readings = List.of(
                new CapacityReading(0, 1, 0.01),
                new CapacityReading(800, 0.95, 0.02),
                new CapacityReading(1500, 0.88, 0.01),
                new CapacityReading(2100, 0.86, 0.03),
                new CapacityReading(2600, 0.8, 0.02));
        CapacityTrend plain = trend(readings);
        CapacityTrend usual = trend(CapacityReading.inUsualUncertainties(readings));
        assertThat(usual.slopePerHour()).isCloseTo(plain.slopePerHour(), within(1e-15));
        assertThat(usual.seSlope()).isCloseTo(plain.seSlope(), within(1e-15));
        assertThat(usual.residualSd()).isCloseTo(plain.residualSd() * 0.02, within(1e-12));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
    void doesNotCareForTheOrderOfReadings(long seed) {
        List<CapacityReading> readings = wearing(seed, 15);
        List<CapacityReading> shuffled = new ArrayList<>(readings);
        Collections.shuffle(shuffled, new Random(seed));
        assertThat(trend(shuffled)).isEqualTo(trend(readings));
    }

    @ParameterizedTest
    @CsvSource({"1, 10", "2, 0.1", "3, 24", "4, 0.003"})
    void followsTheUnitOfTime(long seed, double factor) {
        List<CapacityReading> readings = wearing(seed, 12);
        List<CapacityReading> scaled = readings.stream()
                .map(r -> reading(r.runHours() * factor, r.remainingFraction()))
                .toList();
        HoursToThreshold plain = trend(readings).hoursToThreshold();
        HoursToThreshold other = CapacityTrend.of(scaled, List.of(), 0.7, 3000 * factor, LEVEL, List.of())
                .hoursToThreshold();
        assertThat(other.estimate() / plain.estimate()).isCloseTo(factor, within(1e-9 * factor));
        assertThat(other.lowerOneSided() / plain.lowerOneSided()).isCloseTo(factor, within(1e-9 * factor));
        assertThat(other.interval().upper() / plain.interval().upper()).isCloseTo(factor, within(1e-9 * factor));
    }

    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13, 14, 15, 16, 17, 18})
    void intervalsGrowWithTheLevel(long seed) {
        List<CapacityReading> readings = wearing(seed, 9);
        CapacityTrend narrow = CapacityTrend.of(readings, List.of(), 0.7, 3000, 0.8, List.of(3500.0));
        CapacityTrend wide = CapacityTrend.of(readings, List.of(), 0.7, 3000, 0.9, List.of(3500.0));
        assertThat(wide.slopeInterval().lower())
                .isLessThan(narrow.slopeInterval().lower());
        assertThat(wide.slopeInterval().upper())
                .isGreaterThan(narrow.slopeInterval().upper());
        assertThat(wide.at().get(0).readingLower())
                .isLessThan(narrow.at().get(0).readingLower());
        assertThat(wide.at().get(0).meanUpper())
                .isGreaterThan(narrow.at().get(0).meanUpper());
        HoursToThreshold less = narrow.hoursToThreshold();
        HoursToThreshold more = wide.hoursToThreshold();
        assertThat(more.lowerOneSided()).isLessThan(less.lowerOneSided()).isLessThan(less.estimate());
        assertThat(more.interval().lower()).isLessThan(less.interval().lower());
        assertThat(more.lowerOneSidedNextReading()).isLessThan(more.lowerOneSided());
    }

    @ParameterizedTest
    @ValueSource(longs = {21, 22, 23, 24, 25, 26})
    void theBandMeetsTheThresholdWhereItSays(long seed) {
        List<CapacityReading> readings = wearing(seed, 10);
        HoursToThreshold hours = trend(readings).hoursToThreshold();
        List<Double> ends = List.of(hours.interval().lower(), hours.interval().upper());
        CapacityTrend there = CapacityTrend.of(readings, List.of(), 0.7, 3000, LEVEL, ends);
        assertThat(there.at().get(0).meanLower()).isCloseTo(0.7, within(1e-9));
        assertThat(there.at().get(1).meanUpper()).isCloseTo(0.7, within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({
        "-1, 0.9, readings[1].runHours, '-1 h is outside 0 to 1000000000 h'",
        "1e308, 0.9, readings[1].runHours, '1.0E308 h is outside 0 to 1000000000 h'",
        "NaN, 0.9, readings[1].runHours, 'NaN h is outside 0 to 1000000000 h'",
        "10, -0.25, readings[1].remainingFraction, '-0.25 of the reference is outside 0 to 1000000 of the reference'",
        "10, Infinity, readings[1].remainingFraction, 'Infinity of the reference is outside 0 to 1000000 of the reference'"
    })
    void refusesImpossibleReadings(double hours, double fraction, String field, String message) {
        assertThatExceptionOfType(OutOfRange.class)
                .isThrownBy(() -> trend(List.of(reading(0, 1), reading(hours, fraction))))
                .withMessage(message)
                .satisfies(refusal -> assertThat(refusal.field()).isEqualTo(field));
    }

    @Test
    void refusesAnUncertaintyOfZero() {
        assertThatExceptionOfType(OutOfRange.class)
                .isThrownBy(() -> trend(List.of(new CapacityReading(0, 1, 0.0))))
                .satisfies(refusal -> assertThat(refusal.field()).isEqualTo("readings[0].standardUncertainty"));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 1, 0.3, -2, Double.NaN})
    void refusesALevelThatIsNone(double level) {
        assertThatExceptionOfType(OutOfRange.class)
                .isThrownBy(() -> CapacityTrend.of(List.of(), List.of(), 0.7, 0, level, List.of()))
                .satisfies(refusal -> assertThat(refusal.field()).isEqualTo("level"))
                .withMessageContaining("0.5 to 0.999999");
    }

    @Test
    void refusesMoreReadingsThanItCanTake() {
        List<CapacityReading> many = Collections.nCopies(CapacityTrend.MOST_READINGS + 1, reading(1, 1));
        assertThatExceptionOfType(OutOfRange.class)
                .isThrownBy(() -> trend(many))
                .withMessage("10001 entries are outside 0 to 10000 entries");
    }

    @Test
    void takesTheMostReadingsWithoutHanging() {
        List<CapacityReading> many = IntStream.range(0, CapacityTrend.MOST_READINGS)
                .mapToObj(i -> reading(i, 2 - i * 1e-4 + (i * 7919 % 101) * 1e-4))
                .toList();
        CapacityTrend trend = Assertions.assertTimeoutPreemptively(Duration.ofSeconds(60), () -> trend(many));
        assertThat(trend.robust().slopePerHour()).isCloseTo(-1e-4, within(1e-7));
    }
}
