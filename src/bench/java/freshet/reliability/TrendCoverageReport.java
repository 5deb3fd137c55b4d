package freshet.reliability;

/**
 * Prints how often the intervals of trends hold the truth, over ten thousand simulated fleets of twenty units; another number of fleets may be given.
 *
 * <p>{@code mvn -Pbench test-compile exec:exec -Dexec.args="-cp %classpath freshet.reliability.TrendCoverageReport"}
 */
public final class TrendCoverageReport {

    private TrendCoverageReport() {}

    public static void main(String[] args) {
        int fleets = args.length > 0 ? Integer.parseInt(args[0]) : 10_000;
        long start = System.nanoTime();
        TrendCoverage coverage = TrendCoverage.of(fleets, 1);
        System.out.printf("%d fleets, %d units, %.0f s%n", fleets, coverage.units(), (System.nanoTime() - start) / 1e9);
        System.out.printf("slope, 95 %%:                     %.4f%n", coverage.slope());
        System.out.printf("mean at 3000 h, 95 %%:            %.4f%n", coverage.mean());
        System.out.printf("next usual reading, 95 %%:        %.4f%n", coverage.nextReading());
        System.out.printf("hours to threshold, 95 %%:        %.4f%n", coverage.hoursInterval());
        System.out.printf("hours to threshold, lower 95 %%:  %.4f%n", coverage.hoursLower());
        System.out.printf("median slope, 95 %%:              %.4f%n", coverage.robustSlope());
        System.out.printf("pooled slope, 95 %%:              %.4f%n", coverage.pooledSlope());
    }
}
