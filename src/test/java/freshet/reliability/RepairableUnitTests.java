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

/** Mean time between failures, mean cumulative function and failure trends. */
class RepairableUnitTests {

    private static List<Recurrence.WatchedUnit> fleet(long seed, int units, int mostEvents) {
        Random random = new Random(seed);
        List<Recurrence.WatchedUnit> fleet = new ArrayList<>();
        for (int i = 0; i < units; i++) {
            int end = 50 + random.nextInt(400);
            List<Double> events = random.ints(random.nextInt(mostEvents + 1), 1, end + 1)
                    .asDoubleStream()
                    .boxed()
                    .toList();
            fleet.add(new Recurrence.WatchedUnit(events, end));
        }
        return fleet;
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void recurrenceAgreesWithTheDoubleSumOfItsDefinition(long seed) {
        List<Recurrence.WatchedUnit> fleet = fleet(seed, 12, 6);
        for (Recurrence.Row row : Recurrence.of(fleet, 0.95).table()) {
            double variance = 0;
            for (Recurrence.WatchedUnit unit : fleet) {
                double term = 0;
                for (Recurrence.Row earlier : Recurrence.of(fleet, 0.95).table()) {
                    if (earlier.hours() <= row.hours() && unit.endHours() >= earlier.hours()) {
                        double own = Collections.frequency(unit.eventHours(), earlier.hours());
                        term += (own - (double) earlier.events() / earlier.atRisk()) / earlier.atRisk();
                    }
                }
                variance += term * term;
            }
            assertThat(row.standardError()).isCloseTo(Math.sqrt(variance), within(1e-12));
        }
    }

    @Test
    void aFleetOfOneHasACurveAndNoError() {
        Recurrence one = Recurrence.of(List.of(new Recurrence.WatchedUnit(List.of(30.0, 10.0, 10.0), 30)), 0.95);
        assertThat(one.events()).isEqualTo(3);
        assertThat(one.table())
                .containsExactly(
                        new Recurrence.Row(10, 1, 2, 2, null, null, null),
                        new Recurrence.Row(30, 1, 1, 3, null, null, null));
    }

    @Test
    void unitsThatAllDoTheSameHaveNoSpread() {
        List<Recurrence.WatchedUnit> same =
                Collections.nCopies(7, new Recurrence.WatchedUnit(List.of(10.0, 20.0, 35.0), 40));
        assertThat(Recurrence.of(same, 0.95).table())
                .allSatisfy(row -> assertThat(row.standardError()).isZero());
    }

    @Test
    void aFleetWithoutEventsHasAnEmptyTable() {
        assertThat(Recurrence.of(List.of(new Recurrence.WatchedUnit(List.of(), 0)), 0.9))
                .isEqualTo(new Recurrence(1, 0, List.of()));
    }

    @Test
    void refusesAnEventAfterTheEndOfItsUnit() {
        assertThatExceptionOfType(OutOfRange.class)
                .isThrownBy(() -> Recurrence.of(List.of(new Recurrence.WatchedUnit(List.of(5.0, 41.0), 40)), 0.95))
                .withMessage("41 h is outside 0 to the unit's end, 40 h")
                .satisfies(refusal -> assertThat(refusal.field()).isEqualTo("units[0].eventHours[1]"));
    }

    @Test
    void countsALargeFleetWithoutHanging() {
        List<Recurrence.WatchedUnit> fleet = fleet(5, 50_000, 12);
        Recurrence answer =
                Assertions.assertTimeoutPreemptively(Duration.ofSeconds(30), () -> Recurrence.of(fleet, 0.95));
        assertThat(answer.units()).isEqualTo(50_000);
        assertThat(answer.table().get(answer.table().size() - 1).standardError())
                .isGreaterThan(0);
    }

    @Test
    void mtbfWithoutFailureHasOnlyItsLowerBounds() {
        Mtbf mtbf = Mtbf.of(10_000, 0, Termination.TIME, 0.95);
        assertThat(mtbf.mtbfHours()).isNull();
        assertThat(mtbf.upperOneSided()).isNull();
        assertThat(mtbf.interval().upper()).isNull();
        assertThat(mtbf.lowerOneSided()).isCloseTo(10_000 / -Math.log(0.05), within(1e-8));
    }

    @ParameterizedTest
    @CsvSource({
        "0, 0, TIME, totalHours",
        "NaN, 1, TIME, totalHours",
        "100, -1, TIME, failures",
        "100, 0, FAILURE, failures",
        "100, 2000000, TIME, failures"
    })
    void refusesRecordsThatCannotBe(double hours, int failures, Termination termination, String field) {
        assertThatExceptionOfType(OutOfRange.class)
                .isThrownBy(() -> Mtbf.of(hours, failures, termination, 0.9))
                .satisfies(refusal -> assertThat(refusal.field()).isEqualTo(field));
    }

    @ParameterizedTest
    @CsvSource({"1, TIME", "3, FAILURE", "50, TIME", "1000000, FAILURE"})
    void boundsOfMtbfNestInTheLevel(int failures, Termination termination) {
        Mtbf narrow = Mtbf.of(5000, failures, termination, 0.6);
        Mtbf wide = Mtbf.of(5000, failures, termination, 0.95);
        assertThat(wide.interval().lower())
                .isLessThan(narrow.interval().lower())
                .isLessThan(narrow.mtbfHours());
        assertThat(wide.interval().upper())
                .isGreaterThan(narrow.interval().upper())
                .isGreaterThan(narrow.mtbfHours());
        assertThat(wide.lowerOneSided()).isGreaterThan(wide.interval().lower());
    }

    @Test
    void failureTrendNeedsFailures() {
        FailureTrend none = FailureTrend.of(List.of(), 1000, Termination.TIME, 0.9);
        assertThat(none.shape()).isNull();
        assertThat(none.chiSquareDf()).isNull();
        assertThat(FailureTrend.of(List.of(700.0), 700, Termination.FAILURE, 0.9)
                        .shape())
                .isNull();
        FailureTrend one = FailureTrend.of(List.of(700.0), 1000, Termination.TIME, 0.9);
        assertThat(one.shape()).isCloseTo(1 / Math.log(1000 / 700.0), within(1e-12));
        assertThat(one.shapeUnbiased()).isNull();
        FailureTrend late = FailureTrend.of(List.of(1000.0, 1000.0), 1000, Termination.TIME, 0.9);
        assertThat(late.shape()).isNull();
        assertThat(late.laplace()).isCloseTo(Math.sqrt(6), within(1e-12));
    }

    @Test
    void refusesARecordThatDoesNotEndAtItsLastFailure() {
        assertThatExceptionOfType(OutOfRange.class)
                .isThrownBy(() -> FailureTrend.of(List.of(10.0, 700.0), 1000, Termination.FAILURE, 0.9))
                .withMessage("1000 h is not the last failure's 700 h, though a failure ended the record")
                .satisfies(refusal -> assertThat(refusal.field()).isEqualTo("endHours"));
    }

    @ParameterizedTest
    @CsvSource({"1, 0.001", "2, 24", "3, 10000"})
    void failureTrendFollowsTheUnitOfTime(long seed, double factor) {
        List<Double> events = new Random(seed).doubles(20, 1, 900).boxed().toList();
        List<Double> scaled = events.stream().map(hours -> hours * factor).toList();
        FailureTrend one = FailureTrend.of(events, 1000, Termination.TIME, 0.9);
        FailureTrend other = FailureTrend.of(scaled, 1000 * factor, Termination.TIME, 0.9);
        assertThat(other.shape()).isCloseTo(one.shape(), within(1e-9));
        assertThat(other.laplace()).isCloseTo(one.laplace(), within(1e-9));
        assertThat(other.mtbfAtEnd() / one.mtbfAtEnd()).isCloseTo(factor, within(1e-9 * factor));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void aFleetOfOneHasTheTrendOfItsUnit(long seed) {
        List<Double> events = new Random(seed).doubles(9, 1, 900).boxed().toList();
        FailureTrend unit = FailureTrend.of(events, 1000, Termination.TIME, 0.9);
        FleetFailureTrend fleet = FleetFailureTrend.of(List.of(new Recurrence.WatchedUnit(events, 1000)));
        assertThat(fleet.shape()).isCloseTo(unit.shape(), within(1e-12));
        assertThat(fleet.scale()).isCloseTo(unit.scale(), within(1e-12));
        assertThat(fleet.seShape()).isCloseTo(unit.shape() / 3, within(1e-12));
        assertThat(fleet.expectedEvents(1000)).isCloseTo(9, within(1e-9));
    }

    @Test
    void boundsTheShapeOfAFleetOnItsLogarithm() {
        List<Double> events = new Random(7).doubles(16, 1, 900).boxed().toList();
        FleetFailureTrend fleet = FleetFailureTrend.of(List.of(new Recurrence.WatchedUnit(events, 1000)));
        // one unit: the standard error of ln shape is 1/sqrt(16)
        assertThat(fleet.shapeInterval(0.95).lower())
                .isCloseTo(fleet.shape() / Math.exp(1.959963984540054 / 4), within(1e-12));
        assertThat(fleet.shapeInterval(0.95).upper())
                .isCloseTo(fleet.shape() * Math.exp(1.959963984540054 / 4), within(1e-12));
        assertThat(FleetFailureTrend.of(List.of(new Recurrence.WatchedUnit(List.of(), 700)))
                        .shapeInterval(0.95))
                .isNull();
    }

    @Test
    void expectsEventsOfAUnitOfTheFleet() {
        // four units of different ends: R optim() on the pooled likelihood gives 0.7385118849113976
        FleetFailureTrend fleet = FleetFailureTrend.of(List.of(
                new Recurrence.WatchedUnit(List.of(210.0, 640.0), 1000),
                new Recurrence.WatchedUnit(List.of(640.0), 900),
                new Recurrence.WatchedUnit(List.of(), 700),
                new Recurrence.WatchedUnit(List.of(120.0, 410.0, 850.0), 1200)));
        assertThat(fleet.expectedEvents(500)).isCloseTo(0.7385118849113976, within(1e-7));
        assertThat(FleetFailureTrend.of(List.of(new Recurrence.WatchedUnit(List.of(), 700)))
                        .expectedEvents(500))
                .isNull();
    }
}
