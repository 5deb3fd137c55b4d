package freshet.hydraulics;

import java.util.List;
import java.util.concurrent.TimeUnit;
import org.hipparchus.analysis.solvers.BrentSolver;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Duty points of a three-section line and an eight-point curve: our own solver, and a general one on the same functions. */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class DutyPointBench {

    private static final int LINES = 64;

    private final Curve curve = Curve.of(List.of(
            new Curve.Point(0, 11.4),
            new Curve.Point(1.6, 10.7),
            new Curve.Point(3.2, 9.8),
            new Curve.Point(4.9, 8.6),
            new Curve.Point(6.5, 7.1),
            new Curve.Point(8.1, 5.4),
            new Curve.Point(9.8, 3.5),
            new Curve.Point(11.4, 1.5)));
    private final Line[] lines = new Line[LINES];
    private final List<Drawdown.Level> shaft =
            List.of(new Drawdown.Level(0, 6), new Drawdown.Level(2, 8), new Drawdown.Level(4, 12));
    private int next;

    public DutyPointBench() {
        for (int i = 0; i < LINES; i++) {
            lines[i] = new Line(
                    1 + 0.1 * i,
                    15,
                    38.1,
                    1,
                    List.of(
                            Section.rough(31.75, 6 + 0.2 * i, 0.0015, 0.8),
                            Section.rough(25.4, 15, 0.0015, 1.2),
                            Section.rough(28, 4, 0.01, 0.5)));
        }
    }

    private Line line() {
        next = (next + 1) % LINES;
        return lines[next];
    }

    @Benchmark
    public DutyPoint dutyPoint() {
        return DutyPoint.of(curve, line());
    }

    @Benchmark
    public double dutyFlowOnly() {
        Line line = line();
        return DutyPoint.solve(curve, new Losses(line), line.liftM());
    }

    /** The same flow to the same digits with the numerics library's bracketing solver. */
    @Benchmark
    public double dutyFlowByGeneralSolver() {
        Line line = line();
        Losses losses = new Losses(line);
        double lift = line.liftM();
        return new BrentSolver(1e-14, 1e-13)
                .solve(200, q -> curve.head(q) - lift - losses.at(q).headM, 0, curve.lastFlowM3h());
    }

    @Benchmark
    public double colebrook() {
        next = (next + 1) % LINES;
        return FrictionFactor.at(5000 + 900.0 * next, 5e-5);
    }

    @Benchmark
    public Drawdown drawdown() {
        return Drawdown.of(curve, line(), shaft, 3.5, 0.5, 0.4);
    }
}
