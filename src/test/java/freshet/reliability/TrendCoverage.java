package freshet.reliability;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

/** Simulated fleets of known wear, and how often what a trend claims holds the truth. Whole seeded: the same call gives the same counts. */
final class TrendCoverage {

    static final int UNITS_IN_FLEET = 20;

    /** Twice as new, so that no simulated reading falls below nothing. */
    private static final double INTERCEPT = 2;

    private static final double THRESHOLD = 1.7;
    private static final double ASKED_HOURS = 3000;
    private static final double LEVEL = 0.95;

    private final Random random;
    private int units;
    private int slope;
    private int robustSlope;
    private int mean;
    private int nextReading;
    private int hoursInterval;
    private int hoursLower;
    private int pooledSlope;

    private TrendCoverage(long seed) {
        this.random = new Random(seed);
    }

    static TrendCoverage of(int fleets, long seed) {
        TrendCoverage coverage = new TrendCoverage(seed);
        for (int fleet = 0; fleet < fleets; fleet++) {
            coverage.countFleet();
        }
        return coverage;
    }

    private void countFleet() {
        List<PooledWear.OwnSlope> own = new ArrayList<>();
        double[] truth = new double[UNITS_IN_FLEET];
        for (int unit = 0; unit < UNITS_IN_FLEET; unit++) {
            truth[unit] = -8e-5 + 1.5e-5 * random.nextGaussian();
            CapacityTrend trend = countUnit(truth[unit], 4 + unit % 9);
            own.add(new PooledWear.OwnSlope(trend.slopePerHour(), trend.seSlope()));
        }
        List<PooledWear.UnitSlope> pooled = PooledWear.of(own).units();
        for (int unit = 0; unit < UNITS_IN_FLEET; unit++) {
            double off = pooled.get(unit).slopePerHour() - truth[unit];
            pooledSlope += Math.abs(off)
                            <= Quantiles.normalTwoSided(LEVEL)
                                    * pooled.get(unit).standardError()
                    ? 1
                    : 0;
        }
    }

    private CapacityTrend countUnit(double trueSlope, int n) {
        List<CapacityReading> readings = new ArrayList<>();
        double[] uncertainties = new double[n];
        for (int i = 0; i < n; i++) {
            double u = i % 2 == 0 ? 0.015 : 0.03;
            uncertainties[i] = u;
            double hours = 300 * i + 200 * random.nextDouble();
            readings.add(new CapacityReading(hours, INTERCEPT + trueSlope * hours + u * random.nextGaussian(), u));
        }
        Arrays.sort(uncertainties);
        double usual = uncertainties[n / 2];
        double trueHours = (THRESHOLD - INTERCEPT) / trueSlope;
        CapacityTrend trend = CapacityTrend.of(
                CapacityReading.inUsualUncertainties(readings),
                List.of(),
                THRESHOLD,
                0,
                LEVEL,
                List.of(ASKED_HOURS, Math.min(Math.max(trueHours, 0), 1e9)));
        double truth = INTERCEPT + trueSlope * ASKED_HOURS;
        CapacityTrend.At asked = trend.at().get(0);
        CapacityTrend.At there = trend.at().get(1);
        Double lower = trend.hoursToThreshold().lowerOneSided();
        units++;
        slope += holds(trend.slopeInterval(), trueSlope);
        robustSlope += holds(trend.robust().slopeInterval(), trueSlope);
        mean += asked.meanLower() <= truth && truth <= asked.meanUpper() ? 1 : 0;
        double next = truth + usual * random.nextGaussian();
        nextReading += asked.readingLower() <= next && next <= asked.readingUpper() ? 1 : 0;
        // the interval of hours is the set of all hours whose band holds the threshold: is the true one in it?
        hoursInterval += there.meanLower() <= THRESHOLD && THRESHOLD <= there.meanUpper() ? 1 : 0;
        hoursLower += lower == null || lower <= trueHours ? 1 : 0;
        return trend;
    }

    private static int holds(Interval interval, double value) {
        return interval.lower() <= value && value <= interval.upper() ? 1 : 0;
    }

    int units() {
        return units;
    }

    double slope() {
        return share(slope);
    }

    double robustSlope() {
        return share(robustSlope);
    }

    double mean() {
        return share(mean);
    }

    double nextReading() {
        return share(nextReading);
    }

    double hoursInterval() {
        return share(hoursInterval);
    }

    double hoursLower() {
        return share(hoursLower);
    }

    double pooledSlope() {
        return share(pooledSlope);
    }

    private double share(int held) {
        return (double) held / units;
    }
}
