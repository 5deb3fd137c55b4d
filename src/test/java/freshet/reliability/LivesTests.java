package freshet.reliability;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LivesTests {

    private static Lives.Life failed(double hours) {
        return new Lives.Life(hours, true);
    }

    private static Lives.Life running(double hours) {
        return new Lives.Life(hours, false);
    }

    /** Weibull lives of shape 1.8 and scale 3000 h, a third of them stopped early, every fourth watched from an age on. */
    static List<Lives.Life> lives(long seed, int n) {
        Random random = new Random(seed);
        List<Lives.Life> lives = new ArrayList<>();
        while (lives.size() < n) {
            double life = 3000 * Math.pow(-Math.log1p(-random.nextDouble()), 1 / 1.8);
            double stop = 500 + 5000 * random.nextDouble();
            double entry = lives.size() % 4 == 0 ? 1000 * random.nextDouble() : 0;
            double hours = Math.min(life, stop);
            if (entry < hours) {
                lives.add(new Lives.Life(hours, life <= stop, entry));
            }
        }
        return lives;
    }

    @Test
    void seesNoLawInLivesThatAllRunOn() {
        Lives lives = Lives.of(List.of(running(100), running(2000), running(0)), 0.95);
        assertThat(lives.failures()).isZero();
        assertThat(lives.productLimit()).isEmpty();
        assertThat(lives.medianHours()).isNull();
        assertThat(lives.medianInterval()).isNull();
        assertThat(lives.weibull().status()).isEqualTo(WeibullFit.Status.NO_FAILURES);
        assertThat(lives.weibull().shape()).isNull();
    }

    @Test
    void aSingleLifeHasAMedianAndNoLaw() {
        Lives lives = Lives.of(List.of(failed(800)), 0.95);
        assertThat(lives.medianHours()).isEqualTo(800);
        assertThat(lives.productLimit()).containsExactly(new ProductLimit.Step(800, 1, 1, 0, null, null, null));
        assertThat(lives.weibull().status()).isEqualTo(WeibullFit.Status.NOT_ESTIMABLE);
    }

    @Test
    void identicalLivesHaveNoFiniteShape() {
        assertThat(Lives.of(Collections.nCopies(9, failed(800)), 0.95).weibull().status())
                .isEqualTo(WeibullFit.Status.NOT_ESTIMABLE);
    }

    @Test
    void aSingleFailureAtTheLongestHoursHasNoFiniteShape() {
        assertThat(Lives.of(List.of(running(500), failed(800)), 0.95).weibull().status())
                .isEqualTo(WeibullFit.Status.NOT_ESTIMABLE);
    }

    @Test
    void aSingleFailureBeforeLongerLivesHasAPeak() {
        WeibullFit fit =
                Lives.of(List.of(failed(500), running(800), running(900)), 0.95).weibull();
        assertThat(fit.status()).isEqualTo(WeibullFit.Status.OK);
        assertThat(fit.shapeInterval().lower()).isLessThan(fit.shape());
    }

    @Test
    void aFailureAtZeroHoursCountsInTheCurveAndBarsTheLaw() {
        Lives lives = Lives.of(List.of(failed(0), failed(500), running(800), running(900)), 0.95);
        assertThat(lives.productLimit().get(0).survival()).isEqualTo(0.75);
        assertThat(lives.weibull().status()).isEqualTo(WeibullFit.Status.NOT_ESTIMABLE);
    }

    @Test
    void livesWithinAHairOfEachOtherStillHaveTheirShape() {
        List<Lives.Life> lives = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            lives.add(failed(1000 + 1e-9 * i));
        }
        WeibullFit near = Lives.of(lives, 0.95).weibull();
        assertThat(near.status()).isEqualTo(WeibullFit.Status.OK);
        assertThat(near.shape()).isBetween(1e11, 1e12);
        assertThat(near.meanHours()).isCloseTo(1000, within(1e-6));
    }

    @Test
    void knowsTheMedianWhenTheCurveIsExactlyOneHalf() {
        List<Lives.Life> lives = new ArrayList<>();
        for (int i = 1; i <= 14; i++) {
            lives.add(failed(100 * i));
        }
        assertThat(Lives.of(lives, 0.95).medianHours()).isEqualTo(700);
    }

    @Test
    void countsALifeOnlyAfterItsLateEntry() {
        List<Lives.Life> lives =
                List.of(failed(300), new Lives.Life(900, true, 300.0), new Lives.Life(950, false, 200.0));
        List<ProductLimit.Step> steps = Lives.of(lives, 0.95).productLimit();
        assertThat(steps).extracting(ProductLimit.Step::atRisk).containsExactly(2, 2);
    }

    @Test
    void entryAtZeroIsWatchedFromNew() {
        List<Lives.Life> plain = List.of(failed(300), failed(500), running(700));
        List<Lives.Life> zero = plain.stream()
                .map(l -> new Lives.Life(l.hours(), l.failed(), 0.0))
                .toList();
        assertThat(Lives.of(zero, 0.9)).isEqualTo(Lives.of(plain, 0.9));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void doesNotCareForTheOrderOfLives(long seed) {
        List<Lives.Life> lives = lives(seed, 60);
        List<Lives.Life> shuffled = new ArrayList<>(lives);
        Collections.shuffle(shuffled, new Random(seed));
        Lives one = Lives.of(lives, 0.95);
        Lives other = Lives.of(shuffled, 0.95);
        assertThat(other.productLimit()).isEqualTo(one.productLimit());
        assertThat(other.medianInterval()).isEqualTo(one.medianInterval());
        assertThat(other.weibull().shape()).isCloseTo(one.weibull().shape(), within(1e-10));
        assertThat(other.weibull().scaleHours()).isCloseTo(one.weibull().scaleHours(), within(1e-6));
    }

    @ParameterizedTest
    @CsvSource({"1, 24", "2, 0.0416666", "3, 1000", "4, 0.001"})
    void followsTheUnitOfTime(long seed, double factor) {
        List<Lives.Life> lives = lives(seed, 80);
        List<Lives.Life> scaled = lives.stream()
                .map(l -> new Lives.Life(l.hours() * factor, l.failed(), l.entryHours() * factor))
                .toList();
        WeibullFit one = Lives.of(lives, 0.95).weibull();
        WeibullFit other = Lives.of(scaled, 0.95).weibull();
        assertThat(other.shape()).isCloseTo(one.shape(), within(1e-9));
        assertThat(other.seShape()).isCloseTo(one.seShape(), within(1e-9));
        assertThat(other.scaleHours() / one.scaleHours()).isCloseTo(factor, within(1e-9 * factor));
        assertThat(other.b10Interval().upper() / one.b10Interval().upper()).isCloseTo(factor, within(1e-9 * factor));
        double shift = -Lives.of(lives, 0.95).failures() * Math.log(factor);
        assertThat(other.logLikelihood() - one.logLikelihood()).isCloseTo(shift, within(1e-7));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void intervalsGrowWithTheLevel(long seed) {
        Lives narrow = Lives.of(lives(seed, 40), 0.8);
        Lives wide = Lives.of(lives(seed, 40), 0.99);
        assertThat(wide.weibull().shapeInterval().lower())
                .isLessThan(narrow.weibull().shapeInterval().lower());
        assertThat(wide.weibull().b10Interval().upper())
                .isGreaterThan(narrow.weibull().b10Interval().upper());
        for (int i = 0; i < wide.productLimit().size(); i++) {
            ProductLimit.Step outer = wide.productLimit().get(i);
            ProductLimit.Step inner = narrow.productLimit().get(i);
            if (outer.lower() != null) {
                assertThat(outer.lower()).isLessThan(inner.lower());
                assertThat(inner.upper()).isLessThan(outer.upper());
                assertThat(outer.survival()).isBetween(inner.lower(), inner.upper());
            }
        }
    }

    /** No other law near the fitted one makes the lives more likely, entries counted. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void standsAtThePeakOfTheLikelihood(long seed) {
        List<Lives.Life> lives = lives(seed, 50);
        WeibullFit fit = Lives.of(lives, 0.95).weibull();
        double peak = logLikelihood(lives, fit.shape(), fit.scaleHours());
        assertThat(fit.logLikelihood()).isCloseTo(peak, within(1e-8));
        for (double step : new double[] {0.999, 1.001}) {
            assertThat(logLikelihood(lives, fit.shape() * step, fit.scaleHours()))
                    .isLessThan(peak);
            assertThat(logLikelihood(lives, fit.shape(), fit.scaleHours() * step))
                    .isLessThan(peak);
        }
    }

    private static double logLikelihood(List<Lives.Life> lives, double shape, double scale) {
        double sum = 0;
        for (Lives.Life life : lives) {
            double entry = life.entryHours() == null ? 0 : life.entryHours();
            sum += Math.pow(entry / scale, shape) - Math.pow(life.hours() / scale, shape);
            sum += life.failed() ? Math.log(shape / scale) + (shape - 1) * Math.log(life.hours() / scale) : 0;
        }
        return sum;
    }

    @Test
    void findsTheLawAgainInManyLivesWithoutHanging() {
        List<Lives.Life> lives = lives(99, 200_000);
        Lives answer = Assertions.assertTimeoutPreemptively(Duration.ofSeconds(60), () -> Lives.of(lives, 0.95));
        assertThat(answer.weibull().shape()).isCloseTo(1.8, within(0.03));
        assertThat(answer.weibull().scaleHours()).isCloseTo(3000.0, within(30.0));
        assertThat(answer.medianHours()).isCloseTo(3000 * Math.pow(Math.log(2), 1 / 1.8), within(30.0));
    }

    @ParameterizedTest
    @CsvSource({
        "-1, , lives[1].hours, '-1 h is outside 0.000001 to 1000000000 h'",
        "1e-7, , lives[1].hours, '0.0000001 h is outside 0.000001 to 1000000000 h'",
        "1e308, , lives[1].hours, '1.0E308 h is outside 0.000001 to 1000000000 h'",
        "NaN, , lives[1].hours, 'NaN h is outside 0.000001 to 1000000000 h'",
        "500, 500, lives[1].entryHours, '500 h is not below the life''s 500 h'",
        "500, -3, lives[1].entryHours, '-3 h is outside 0.000001 to 1000000000 h'"
    })
    void refusesImpossibleLives(double hours, Double entry, String field, String message) {
        assertThatExceptionOfType(OutOfRange.class)
                .isThrownBy(() -> Lives.of(List.of(failed(10), new Lives.Life(hours, true, entry)), 0.95))
                .withMessage(message)
                .satisfies(refusal -> assertThat(refusal.field()).isEqualTo(field));
    }

    @Test
    void refusesNoLifeAtAll() {
        assertThatExceptionOfType(OutOfRange.class)
                .isThrownBy(() -> Lives.of(List.of(), 0.95))
                .withMessage("0 entries are outside 1 to 1000000 entries");
    }
}
