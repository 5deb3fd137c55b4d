package freshet.reliability;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Pooled wear and maintenance indicators. */
class FleetFigureTests {

    private static PooledWear.OwnSlope slope(double perHour, double error) {
        return new PooledWear.OwnSlope(perHour, error);
    }

    private static Indicators.Down failure(double down, Double detection, Double active) {
        return new Indicators.Down(Indicators.DownType.FAILURE, down, detection, active);
    }

    @Test
    void oneUnitKeepsItsOwnSlope() {
        PooledWear pooled = PooledWear.of(List.of(slope(-8e-5, 1e-5)));
        assertThat(pooled.betweenUnitVariance()).isNull();
        assertThat(pooled.meanSlope()).isEqualTo(-8e-5);
        assertThat(pooled.units()).containsExactly(new PooledWear.UnitSlope(null, -8e-5, 1e-5));
    }

    @Test
    void expectsOfAnotherUnitTheMeanWithTheSpreadBetweenUnits() {
        PooledWear pooled = PooledWear.of(List.of(slope(-8e-5, 1e-6), slope(-4e-5, 1e-6), slope(-6e-5, 1e-6)));
        PooledWear.UnitSlope another = pooled.ofAnother();
        // equal errors v: tau2 is the sample variance 4e-10 less v, the error of the mean sqrt((v + tau2)/3)
        double tau2 = 4e-10 - 1e-12;
        assertThat(another.slopePerHour()).isCloseTo(-6e-5, within(1e-15));
        assertThat(another.standardError()).isCloseTo(Math.sqrt(tau2 + 4e-10 / 3), within(1e-12));
        // z(0.975) = 1.959963984540054, NIST/SEMATECH e-Handbook 1.3.6.7.1 to three digits
        assertThat(another.interval(0.95).lower())
                .isCloseTo(-6e-5 - 1.959963984540054 * another.standardError(), within(1e-15));
        assertThat(another.interval(0.95).upper())
                .isCloseTo(-6e-5 + 1.959963984540054 * another.standardError(), within(1e-15));
        assertThat(PooledWear.of(List.of(slope(-8e-5, 1e-5))).ofAnother()).isNull();
    }

    @Test
    void unitsThatAgreeTakeTheirMean() {
        PooledWear pooled = PooledWear.of(List.of(slope(-8e-5, 1e-5), slope(-8.1e-5, 2e-5), slope(-7.9e-5, 1.5e-5)));
        assertThat(pooled.betweenUnitVariance()).isZero();
        assertThat(pooled.units()).allSatisfy(unit -> {
            assertThat(unit.weightOfMean()).isEqualTo(1);
            assertThat(unit.slopePerHour()).isCloseTo(pooled.meanSlope(), within(1e-18));
            assertThat(unit.standardError()).isCloseTo(pooled.seMeanSlope(), within(1e-15));
        });
    }

    @Test
    void oneVerySureUnitDoesNotDrownTheOthers() {
        PooledWear pooled = PooledWear.of(List.of(slope(-8e-5, 1e-15), slope(-4e-5, 1e-6), slope(-6e-5, 1e-6)));
        assertThat(pooled.betweenUnitVariance()).isGreaterThan(1e-10).isLessThan(1e-8);
        assertThat(pooled.units().get(0).slopePerHour()).isCloseTo(-8e-5, within(1e-12));
    }

    @ParameterizedTest
    @CsvSource({"0, slopes[1].standardError", "-1, slopes[1].standardError", "NaN, slopes[1].standardError"})
    void refusesSlopesWithoutAnError(double error, String field) {
        assertThatExceptionOfType(OutOfRange.class)
                .isThrownBy(() -> PooledWear.of(List.of(slope(-1e-5, 1e-6), slope(-1e-5, error))))
                .satisfies(refusal -> assertThat(refusal.field()).isEqualTo(field));
    }

    @Test
    void addsUpTheFleetBeforeItDivides() {
        Indicators fleet = Indicators.of(List.of(
                new Indicators.UnitRecord(2000, 100, List.of(failure(10, 2.0, null), failure(20, null, 4.0))),
                new Indicators.UnitRecord(1000, 700, List.of(failure(30, 3.0, 5.0)))));
        assertThat(fleet.failures()).isEqualTo(3);
        assertThat(fleet.mtbfOperatingHours()).isCloseTo(800.0 / 3, within(1e-12));
        assertThat(fleet.meanDownHours()).isEqualTo(20);
        assertThat(fleet.meanRepairHours())
                .as("of the two that state their detection")
                .isEqualTo(17.5);
        assertThat(fleet.meanActiveRepairHours()).isEqualTo(4.5);
        assertThat(fleet.availabilityTimeBased()).isCloseTo(2940.0 / 3000, within(1e-15));
    }

    @Test
    void aUnitThatNeverRanHasNoMeanTime() {
        Indicators idle = Indicators.of(List.of(new Indicators.UnitRecord(0, 0, List.of())));
        assertThat(idle).isEqualTo(new Indicators(0, null, null, null, null, null, null, null, null));
        Indicators broken = Indicators.of(List.of(new Indicators.UnitRecord(100, 0, List.of(failure(40, null, null)))));
        assertThat(broken.mtbfOperatingHours()).isNull();
        assertThat(broken.mtbfLowerOneSided95()).isNull();
        assertThat(broken.availabilityRestoration()).isZero();
    }

    @Test
    void refusesMoreHoursDownThanThereWere() {
        assertThatExceptionOfType(OutOfRange.class)
                .isThrownBy(() -> Indicators.of(List.of(
                        new Indicators.UnitRecord(50, 10, List.of(failure(30, null, null), failure(21, null, null))))))
                .withMessage("51 h down together is more than the unit's required 50 h")
                .satisfies(refusal -> assertThat(refusal.field()).isEqualTo("units[0].downs"));
        assertThatExceptionOfType(OutOfRange.class)
                .isThrownBy(() ->
                        Indicators.of(List.of(new Indicators.UnitRecord(50, 10, List.of(failure(30, 31.0, null))))))
                .withMessage("31 h is outside 0 to the hours down, 30 h")
                .satisfies(refusal -> assertThat(refusal.field()).isEqualTo("units[0].downs[0].detectionHours"));
    }
}
