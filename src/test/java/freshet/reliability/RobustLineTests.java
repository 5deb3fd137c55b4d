package freshet.reliability;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RobustLineTests {

    /** Points with many ties in both directions. */
    private static double[][] points(long seed, int n) {
        Random random = new Random(seed);
        double[] x = random.ints(n, 0, 12).asDoubleStream().sorted().toArray();
        double[] y = random.ints(n, -4, 5).asDoubleStream().map(v -> v / 8).toArray();
        return new double[][] {x, y};
    }

    private static List<Double> slopes(double[] x, double[] y) {
        List<Double> slopes = new ArrayList<>();
        for (int i = 0; i < x.length; i++) {
            for (int j = i + 1; j < x.length; j++) {
                if (x[j] > x[i]) {
                    slopes.add((y[j] - y[i]) / (x[j] - x[i]) + 0.0);
                }
            }
        }
        slopes.sort(null);
        return slopes;
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
    void findsTheSameSlopesAsSortingThemAll(long seed) {
        double[][] points = points(seed, 10 + (int) seed);
        RobustLine line = RobustLine.through(points[0], points[1], 0.95);
        List<Double> slopes = slopes(points[0], points[1]);
        int n = slopes.size();
        assertThat(line.slopePerHour()).isCloseTo((slopes.get((n - 1) / 2) + slopes.get(n / 2)) / 2, within(1e-15));
        assertThat(slopes)
                .contains(line.slopeInterval().lower(), line.slopeInterval().upper());
        assertThat(line.slopeInterval().lower()).isLessThanOrEqualTo(line.slopePerHour());
        assertThat(line.slopeInterval().upper()).isGreaterThanOrEqualTo(line.slopePerHour());
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void standsUnmovedByOneWildReading(long seed) {
        Random random = new Random(seed);
        double[] x = new double[15];
        double[] y = new double[15];
        Arrays.setAll(x, i -> 100.0 * i);
        Arrays.setAll(y, i -> 1 - 1e-4 * x[i] + 1e-4 * random.nextGaussian());
        double before = RobustLine.through(x, y, 0.95).slopePerHour();
        y[14] = 0.1;
        assertThat(RobustLine.through(x, y, 0.95).slopePerHour()).isCloseTo(before, within(5e-6));
    }
}
