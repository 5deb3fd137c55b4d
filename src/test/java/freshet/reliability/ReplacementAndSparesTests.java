package freshet.reliability;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.analysis.integration.RombergIntegrator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Replacement age, survival of the next mission, and spares. */
class ReplacementAndSparesTests {

    @ParameterizedTest
    @CsvSource({"1.2, 1000, 1, 20", "1.5, 1500, 50, 500", "2, 700, 1, 1.5", "3.7, 4000, 80, 200", "12, 900, 5, 6"})
    void noOtherAgeCostsLess(double shape, double scale, double planned, double failure) {
        ReplacementAge best = ReplacementAge.of(shape, scale, planned, failure);
        assertThat(best.policy()).isEqualTo(ReplacementAge.Policy.REPLACE_AT_AGE);
        assertThat(best.costRate())
                .isCloseTo(cost(shape, scale, planned, failure, best.optimumHours()), within(1e-9 * best.costRate()));
        for (double factor : new double[] {0.2, 0.5, 0.9, 0.99, 1.01, 1.1, 1.5, 3}) {
            assertThat(cost(shape, scale, planned, failure, best.optimumHours() * factor))
                    .isGreaterThan(best.costRate());
        }
        assertThat(best.savingFraction()).isBetween(0.0, 1.0);
    }

    private static double cost(double shape, double scale, double planned, double failure, double hours) {
        double survival = Math.exp(-Math.pow(hours / scale, shape));
        double cycle = new RombergIntegrator(1e-12, 1e-12, 4, 20)
                .integrate(5_000_000, t -> Math.exp(-Math.pow(t / scale, shape)), 0, hours);
        return (planned * survival + failure * (1 - survival)) / cycle;
    }

    @ParameterizedTest
    @CsvSource({"0.7, 1, 100", "1, 1, 100", "3, 100, 100", "3, 200, 100", "1.0001, 1, 1.1", "1.02, 1, 2"})
    void runsToFailureWhereReplacingCannotPay(double shape, double planned, double failure) {
        ReplacementAge age = ReplacementAge.of(shape, 1000, planned, failure);
        assertThat(age.policy()).isEqualTo(ReplacementAge.Policy.RUN_TO_FAILURE);
        assertThat(age.optimumHours()).isNull();
        assertThat(age.costRate()).isEqualTo(age.costRateRunToFailure());
        assertThat(age.savingFraction()).isZero();
    }

    @ParameterizedTest
    @CsvSource({"1000000000, 1000, 1e-6, 1e12", "1.000001, 1e9, 1e-6, 1e12", "500, 1e-6, 1e-6, 2e-6"})
    void holdsAtTheEndsOfItsRanges(double shape, double scale, double planned, double failure) {
        ReplacementAge age = ReplacementAge.of(shape, scale, planned, failure);
        assertThat(age.costRate()).isFinite().isPositive().isLessThanOrEqualTo(age.costRateRunToFailure());
    }

    @ParameterizedTest
    @CsvSource({
        "2, 1000, 0, 5, plannedCost",
        "2, 0, 1, 5, scaleHours",
        "0, 1000, 1, 5, shape",
        "2, 1000, 1, NaN, failureCost"
    })
    void refusesLawsAndCostsThatCannotBe(double shape, double scale, double planned, double failure, String field) {
        assertThatExceptionOfType(OutOfRange.class)
                .isThrownBy(() -> ReplacementAge.of(shape, scale, planned, failure))
                .satisfies(refusal -> assertThat(refusal.field()).isEqualTo(field));
    }

    @Test
    void aPartWithoutWearDoesNotAge() {
        Survival young = Survival.of(1, 1000, 0, 200);
        Survival old = Survival.of(1, 1000, 50_000, 200);
        assertThat(old.conditionalSurvival()).isCloseTo(young.conditionalSurvival(), within(1e-15));
        assertThat(young.conditionalSurvival()).isCloseTo(Math.exp(-0.2), within(1e-15));
        assertThat(young.unconditionalSurvival()).isEqualTo(young.conditionalSurvival());
    }

    @ParameterizedTest
    @CsvSource({
        "1000000000, 1e-6, 1e9, 1e9, 0",
        "1000000000, 1e9, 0, 1e9, 0.36787944117144233",
        "2, 1000, 1e9, 0, 1",
        "0.01, 1e-6, 0, 0, 1"
    })
    void survivalHoldsAtTheEndsOfItsRanges(double shape, double scale, double age, double mission, double expected) {
        assertThat(Survival.of(shape, scale, age, mission).conditionalSurvival())
                .isCloseTo(expected, within(1e-12));
    }

    @ParameterizedTest
    @CsvSource({"0, 0.95", "1e-300, 0.99", "0.01, 0.999", "7.3, 0.5", "400, 0.9", "1000000, 0.999999"})
    void holdsTheSmallestStockThatServes(double demand, double level) {
        Spares spares = Spares.of(demand, level);
        assertThat(spares.probabilityOfNoShortage()).isBetween(level, 1.0);
        if (spares.stock() > 0) {
            double oneLess = org.hipparchus.special.Gamma.regularizedGammaQ(spares.stock(), demand);
            assertThat(oneLess).isLessThan(level);
        }
    }

    @Test
    void bridgesALeadTimeInThePeak() {
        Spares spares = Spares.forLeadTime(73, 10, 1.5, 0.95);
        assertThat(spares.meanDemand()).isCloseTo(3, within(1e-12));
        assertThat(spares.stock()).isEqualTo(6);
    }

    @ParameterizedTest
    @CsvSource({
        "-1, 0.9, meanDemand",
        "NaN, 0.9, meanDemand",
        "1e308, 0.9, meanDemand",
        "3, 1, serviceLevel",
        "3, 0, serviceLevel"
    })
    void refusesDemandsThatCannotBe(double demand, double level, String field) {
        assertThatExceptionOfType(OutOfRange.class)
                .isThrownBy(() -> Spares.of(demand, level))
                .satisfies(refusal -> assertThat(refusal.field()).isEqualTo(field));
    }
}
