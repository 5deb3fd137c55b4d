package freshet.reliability;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** How often trend intervals hold what they claim to hold, in simulated units of known wear. */
class TrendCoverageTests {

    private static final int UNITS = 4000;
    private static final double INTERCEPT = 1;
    private static final double SLOPE = -8e-5;
    private static final double THRESHOLD = 0.7;
    private static final double TRUE_HOURS = (THRESHOLD - INTERCEPT) / SLOPE;

    private int slopeHeld;
    private int meanHeld;
    private int readingHeld;
    private int intervalHeld;
    private int lowerHeld;

    @Test
    void intervalsHoldTheTruthAsOftenAsTheySay() {
        Random random = new Random(20260401);
        for (int unit = 0; unit < UNITS; unit++) {
            count(random, 4 + unit % 9);
        }
        assertThat(List.of(slopeHeld, meanHeld, readingHeld, intervalHeld, lowerHeld))
                .allSatisfy(held -> assertThat((double) held / UNITS).isBetween(0.935, 0.965));
    }

    private void count(Random random, int n) {
        List<CapacityReading> readings = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            // exact powers of two for the weights' sake; the noise has the uncertainty that the reading states
            double u = i % 2 == 0 ? 0.015625 : 0.03125;
            double hours = 300 * i + 200 * random.nextDouble();
            readings.add(new CapacityReading(hours, INTERCEPT + SLOPE * hours + u * random.nextGaussian(), u));
        }
        CapacityTrend trend = CapacityTrend.of(
                CapacityReading.inUsualUncertainties(readings), List.of(), THRESHOLD, 0, 0.95, List.of(3000.0));
        double usual = readings.stream()
                .mapToDouble(CapacityReading::standardUncertainty)
                .sorted()
                .toArray()[n / 2];
        CapacityTrend.At at = trend.at().get(0);
        double truth = INTERCEPT + SLOPE * 3000;
        double next = truth + usual * random.nextGaussian();
        slopeHeld += holds(
                trend.slopeInterval().lower(), SLOPE, trend.slopeInterval().upper());
        meanHeld += holds(at.meanLower(), truth, at.meanUpper());
        readingHeld += holds(at.readingLower(), next, at.readingUpper());
        intervalHeld += bandHoldsThreshold(readings) ? 1 : 0;
        HoursToThreshold hours = trend.hoursToThreshold();
        lowerHeld += hours.lowerOneSided() == null || hours.lowerOneSided() <= TRUE_HOURS ? 1 : 0;
        assertIntervalIsTheBand(hours, bandHoldsThreshold(readings));
    }

    /** The two-sided set of hours, asked directly: does the band at the true hours hold the threshold? */
    private static boolean bandHoldsThreshold(List<CapacityReading> readings) {
        CapacityTrend.At at = CapacityTrend.of(readings, List.of(), THRESHOLD, 0, 0.95, List.of(TRUE_HOURS))
                .at()
                .get(0);
        return at.meanLower() <= THRESHOLD && THRESHOLD <= at.meanUpper();
    }

    private static void assertIntervalIsTheBand(HoursToThreshold hours, boolean held) {
        Interval interval = hours.interval();
        if (interval != null && interval.lower() != null) {
            boolean inside =
                    interval.lower() <= TRUE_HOURS && (interval.upper() == null || TRUE_HOURS <= interval.upper());
            assertThat(inside).isEqualTo(held);
        }
    }

    private static int holds(double lower, double value, double upper) {
        return lower <= value && value <= upper ? 1 : 0;
    }
}
