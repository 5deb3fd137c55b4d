package freshet.hydraulics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The friction factor solves its equation, joins its three laws and never lets the loss fall with the flow. */
class FrictionFactorTests {

    @ParameterizedTest
    @ValueSource(doubles = {0, 1e-7, 1e-5, 1e-4, 1e-3, 0.01, 0.05, 0.2, 0.5})
    void solvesColebrookToTheLastDigits(double roughness) {
        for (double re = 4000; re < 1e12; re *= 1.7) {
            double x = 1 / Math.sqrt(FrictionFactor.of(re, roughness));
            double right = -2 * Math.log10(roughness / 3.7 + 2.51 * x / re);
            assertThat(x).as("Re " + re).isCloseTo(right, within(2e-14 * x));
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 1e-5, 1e-3, 0.05, 0.5})
    void joinsItsLawsWithoutAStepOrAKink(double roughness) {
        for (double joint : new double[] {2000, 4000}) {
            double before = FrictionFactor.of(Math.nextDown(joint), roughness);
            double after = FrictionFactor.of(joint, roughness);
            assertThat(before).isCloseTo(after, within(1e-13));
            double low = FrictionFactor.logSlope(Math.nextDown(joint), roughness, before);
            assertThat(low).isCloseTo(FrictionFactor.logSlope(joint, roughness, after), within(1e-9));
        }
        assertThat(FrictionFactor.of(2000, roughness)).isCloseTo(0.032, within(1e-15));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 1e-5, 1e-3, 0.05, 0.5})
    void letsTheLossRiseStrictlyWithTheFlow(double roughness) {
        double before = 0;
        for (double re = 1; re < 1e8; re *= 1.003) {
            double loss = FrictionFactor.of(re, roughness) * re * re;
            assertThat(loss).isGreaterThan(before);
            before = loss;
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {500, 1999, 2300, 3000, 3900, 4001, 5e4, 1e7})
    void knowsItsOwnSlope(double re) {
        double f = FrictionFactor.of(re, 1e-3);
        double step = 1e-6;
        double slope = (Math.log(FrictionFactor.of(re * (1 + step), 1e-3))
                        - Math.log(FrictionFactor.of(re * (1 - step), 1e-3)))
                / (2 * step);
        assertThat(FrictionFactor.logSlope(re, 1e-3, f)).isCloseTo(slope, within(1e-7));
    }

    @Test
    void refusesWhatIsNoPipeFlow() {
        for (double re : new double[] {0, -1, 1e-7, 1e13, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThatThrownBy(() -> FrictionFactor.of(re, 0))
                    .isInstanceOfSatisfying(
                            OutOfRange.class, e -> assertThat(e.field()).isEqualTo("reynolds"));
        }
        assertThatThrownBy(() -> FrictionFactor.of(1e5, 0.51)).hasMessageContaining("0.51");
    }
}
