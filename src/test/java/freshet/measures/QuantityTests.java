package freshet.measures;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Factors: NIST SP 811 (2008), appendix B, as repeated in the table of each case. */
class QuantityTests {

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "FLOW | 1 gpm | 0.2271247070",
                "FLOW | 1800 gph | 6.81374121",
                "FLOW | 150 L/min | 9",
                "FLOW | 9 m3/h | 9",
                "FLOW | 9m³/h | 9",
                "FLOW | 1.5 L/s | 5.4",
                "BORE | 4 1/2 in | 114.3",
                "BORE | 1½ in | 38.1",
                "BORE | 3/4\" | 19.05",
                "BORE | 31.75 mm | 31.75",
                "HEAD | 12 ft | 3.6576",
                "HEAD | 4.1 m | 4.1",
                "LENGTH | 1,000 ft | 304.8",
                "VOLUME | 5 gal | 18.92705892",
                "VOLUME | 60 L | 60",
                "PRESSURE | 12 psi | 82.737087516",
                "TEMPERATURE | 68 F | 20",
                "TEMPERATURE | 59 °F | 15",
                "POWER | 1 hp | 745.6998716"
            })
    void readsATypedUnit(Quantity quantity, String typed, double inside) {
        assertThat(quantity.parse(typed, UnitSystem.US)).isCloseTo(inside, within(1e-9 * Math.abs(inside)));
        assertThat(quantity.parse(typed, UnitSystem.SI)).isCloseTo(inside, within(1e-9 * Math.abs(inside)));
    }

    @Test
    void takesABareNumberInThePersonsUnit() {
        assertThat(Quantity.FLOW.parse("40", UnitSystem.SI)).isEqualTo(40);
        assertThat(Quantity.FLOW.parse("40", UnitSystem.US)).isCloseTo(9.08498828, within(1e-9));
        assertThat(Quantity.TEMPERATURE.parse("60", UnitSystem.US)).isCloseTo(15.5556, within(1e-4));
        assertThat(Quantity.HEAD.parse("-2", UnitSystem.SI)).isEqualTo(-2);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "FLOW | 40 psi | measures.otherUnit",
                "FLOW | forty | measures.notANumber",
                "FLOW | 4,1 | measures.comma",
                "HEAD | 1e308 | measures.otherUnit",
                "HEAD | NaN | measures.notANumber",
                "BORE | 1/0 in | measures.notANumber",
                "FLOW | <script>alert(1)</script> | measures.notANumber"
            })
    void refusesWithTheReason(Quantity quantity, String typed, String code) {
        assertThatThrownBy(() -> quantity.parse(typed, UnitSystem.US))
                .isInstanceOfSatisfying(
                        NotAMeasure.class, wrong -> assertThat(wrong.code()).isEqualTo(code));
    }

    @ParameterizedTest
    @EnumSource
    void givesBackInAFieldWhatWasTyped(Quantity quantity) {
        for (UnitSystem system : UnitSystem.values()) {
            for (String typed : new String[] {"0", "1", "12.5", "0.75", "123.456", "31.75"}) {
                double inside = quantity.parse(typed, system);
                assertThat(quantity.input(inside, system)).isEqualTo(typed);
            }
        }
    }

    @Test
    void showsBothSystemsWithANoBreakSpace() {
        assertThat(Quantity.FLOW.show(7.06, UnitSystem.US)).isEqualTo("31.1\u00a0gpm");
        assertThat(Quantity.FLOW.show(7.06, UnitSystem.SI)).isEqualTo("7.06\u00a0m³/h");
        assertThat(Quantity.TEMPERATURE.show(20, UnitSystem.US)).isEqualTo("68\u00a0°F");
        assertThat(Quantity.HEAD.show(-0.001, UnitSystem.SI)).isEqualTo("0.00\u00a0m");
    }
}
