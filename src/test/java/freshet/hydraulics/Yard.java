package freshet.hydraulics;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** Makes pumps and lines at random from a seed, such as a yard may own. */
final class Yard {

    private final SplittableRandom random;

    Yard(long seed) {
        random = new SplittableRandom(seed);
    }

    double between(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    /** Spread evenly over the powers of ten. */
    double around(double low, double high) {
        return low * Math.pow(high / low, random.nextDouble());
    }

    int count(int low, int high) {
        return random.nextInt(low, high + 1);
    }

    /** Falling heads over rising flows with uneven steps, sometimes to no head at all. */
    Curve curve() {
        int n = count(2, 40);
        double[] steps = new double[n];
        double[] falls = new double[n];
        double flow = 0;
        double fall = 0;
        for (int i = 1; i < n; i++) {
            steps[i] = around(0.05, 1);
            falls[i] = around(0.01, 1);
            flow += steps[i];
            fall += falls[i];
        }
        double lastFlow = around(0.5, 120);
        double shutOff = around(2, 60);
        double lost = random.nextInt(4) == 0 ? shutOff : shutOff * between(0.3, 0.99);
        List<Curve.Point> points = new ArrayList<>();
        double q = 0;
        double h = shutOff;
        points.add(new Curve.Point(q, h));
        for (int i = 1; i < n; i++) {
            q += steps[i] / flow * lastFlow;
            h = Math.max(0, h - falls[i] / fall * lost);
            points.add(new Curve.Point(q, i == n - 1 && lost == shutOff ? 0 : h));
        }
        return Curve.of(points);
    }

    /** A line that suits the pump's size, sometimes far too narrow, sometimes wide. */
    Line line(Curve curve) {
        double wide = 10 * Math.sqrt(curve.lastFlowM3h());
        List<Section> sections = new ArrayList<>();
        int n = random.nextInt(8) == 0 ? 20 : count(0, 4);
        for (int i = 0; i < n; i++) {
            double bore = wide * between(0.5, 2);
            double k = random.nextBoolean() ? 0 : between(0, 8);
            double length = random.nextInt(6) == 0 ? 0 : around(0.5, 200);
            sections.add(
                    random.nextInt(4) == 0
                            ? Section.hazenWilliams(bore, length, between(80, 150), k)
                            : Section.rough(bore, length, random.nextInt(5) == 0 ? 0 : around(0.0015, 0.5), k));
        }
        return new Line(
                curve.shutOffHeadM() * between(-0.2, 1.05),
                between(0, 60),
                random.nextBoolean() ? null : Double.valueOf(wide * between(0.7, 1.5)),
                random.nextInt(3) == 0 ? 0 : 1,
                sections);
    }

    double gauss() {
        double u = 1 - random.nextDouble();
        return Math.sqrt(-2 * Math.log(u)) * Math.cos(2 * Math.PI * random.nextDouble());
    }
}
