package freshet.reliability;

import org.apache.commons.statistics.distribution.PoissonDistribution;

/**
 * How many spares to hold so that a Poisson demand is met with a given chance: the smallest stock s with P(demand ≤ s) at or above it.
 *
 * <p>This is the chance of no shortage at all, not the share of demand filled from the shelf.
 *
 * @param meanDemand expected demand over the time to be bridged
 * @param stock whole spares
 * @param probabilityOfNoShortage P(demand ≤ stock)
 */
public record Spares(double meanDemand, int stock, double probabilityOfNoShortage) {

    private static final double MOST_DEMAND = 1e6;

    /** Days of a year when a yearly demand is shared over a lead time. */
    private static final double DAYS_PER_YEAR = 365;

    /**
     * Stock for a demand known over the time to be bridged.
     *
     * @param meanDemand 0 to 1e6 spares
     * @param serviceLevel chance of no shortage, 0.5 to 0.999999
     * @throws OutOfRange for a number outside its range
     */
    public static Spares of(double meanDemand, double serviceLevel) {
        Limits.within("meanDemand", meanDemand, 0, MOST_DEMAND, "spares");
        Limits.within("serviceLevel", serviceLevel, 0.5, 0.999999, "");
        if (meanDemand < Double.MIN_NORMAL) {
            return new Spares(meanDemand, 0, 1);
        }
        PoissonDistribution demand = PoissonDistribution.of(meanDemand);
        int stock = Math.max(0, demand.inverseCumulativeProbability(serviceLevel));
        while (stock > 0 && demand.cumulativeProbability(stock - 1) >= serviceLevel) {
            stock--;
        }
        while (demand.cumulativeProbability(stock) < serviceLevel) {
            stock++;
        }
        return new Spares(meanDemand, stock, demand.cumulativeProbability(stock));
    }

    /**
     * Stock to bridge a supplier's lead time in the busy season.
     *
     * @param demandPerYear 0 to 1e6 spares per year
     * @param leadDays 0 to 3650 days
     * @param peakFactor demand of the season over that of the year's mean, 0.01 to 100
     * @param serviceLevel chance of no shortage, 0.5 to 0.999999
     * @throws OutOfRange for a number outside its range
     */
    public static Spares forLeadTime(double demandPerYear, double leadDays, double peakFactor, double serviceLevel) {
        Limits.within("demandPerYear", demandPerYear, 0, MOST_DEMAND, "spares per year");
        Limits.within("leadDays", leadDays, 0, 3650, "days");
        Limits.within("peakFactor", peakFactor, 0.01, 100, "");
        return of(demandPerYear * leadDays / DAYS_PER_YEAR * peakFactor, serviceLevel);
    }
}
