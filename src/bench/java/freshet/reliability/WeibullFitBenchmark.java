package freshet.reliability;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** One full fit of a Weibull law to 100 000 lives, two thirds of them failed: shape, scale, errors, intervals, likelihood. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class WeibullFitBenchmark {

    private static final int LIVES = 100_000;

    private List<Lives.Life> watchedFromNew = List.of();
    private List<Lives.Life> enteredLate = List.of();

    @Setup
    public void drawLives() {
        watchedFromNew = lives(0);
        enteredLate = lives(1000);
    }

    private static List<Lives.Life> lives(double latestEntry) {
        Random random = new Random(1);
        List<Lives.Life> lives = new ArrayList<>();
        while (lives.size() < LIVES) {
            double life = 3000 * Math.pow(-Math.log1p(-random.nextDouble()), 1 / 1.8);
            double stop = 500 + 6000 * random.nextDouble();
            double entry = latestEntry * random.nextDouble();
            if (entry < Math.min(life, stop)) {
                lives.add(new Lives.Life(Math.min(life, stop), life <= stop, entry));
            }
        }
        return lives;
    }

    @Benchmark
    public WeibullFit fitsLivesWatchedFromNew() {
        return WeibullFit.of(watchedFromNew, 0.95);
    }

    @Benchmark
    public WeibullFit fitsLivesEnteredLate() {
        return WeibullFit.of(enteredLate, 0.95);
    }

    @Benchmark
    public Lives estimatesAllOfLives() {
        return Lives.of(watchedFromNew, 0.95);
    }
}
