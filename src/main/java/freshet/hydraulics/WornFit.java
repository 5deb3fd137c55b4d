package freshet.hydraulics;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Weighted least squares for the two factors of a worn curve: Gauss-Newton on ln a and ln b, halving any step that does not
 * help, with a fixed number of rounds.
 */
record WornFit(
        WornCurve.Identified identified,
        double flowFactor,
        double headFactor,
        double varianceA,
        double varianceB,
        double covariance) {

    private static final int ROUNDS = 100;
    /** Sine squared of the angle between the columns for a and b below which tests are too alike to tell both. */
    private static final double TOO_ALIKE = 1e-4;

    static WornFit of(Curve reference, List<WornCurve.TestPoint> tests) {
        Search search = new Search(reference, tests);
        boolean flowing = false;
        boolean several = false;
        for (WornCurve.TestPoint test : tests) {
            flowing |= test.flowM3h() > 0;
            several |= test.flowM3h() != tests.get(0).flowM3h();
        }
        if (!flowing) {
            return search.run(WornCurve.Identified.HEAD_FACTOR);
        }
        WornFit both = several ? search.run(WornCurve.Identified.BOTH) : null;
        return both != null ? both : search.run(WornCurve.Identified.FLOW_FACTOR);
    }

    /** The state of one search. */
    private static final class Search {

        private final Curve reference;
        private final List<WornCurve.TestPoint> tests;
        private final boolean weighted;
        private double lnA;
        private double lnB;
        // sums of the normal equations, and of the squares
        private double aa;
        private double bb;
        private double ab;
        private double ra;
        private double rb;

        Search(Curve reference, List<WornCurve.TestPoint> tests) {
            this.reference = reference;
            this.tests = tests;
            this.weighted = tests.stream().allMatch(t -> t.flowUncertaintyM3h() + t.headUncertaintyM() > 0);
        }

        @Nullable
        WornFit run(WornCurve.Identified free) {
            start(free);
            boolean a = free != WornCurve.Identified.HEAD_FACTOR;
            boolean b = free != WornCurve.Identified.FLOW_FACTOR;
            for (int i = 0; i < ROUNDS; i++) {
                double[] weights = weights();
                double before = sums(weights);
                double det = aa * bb - ab * ab;
                if (a && b && !(det > TOO_ALIKE * aa * bb)) {
                    return null;
                }
                double stepA = a ? (b ? (bb * ra - ab * rb) / det : ra / aa) : 0;
                double stepB = b ? (a ? (aa * rb - ab * ra) / det : rb / bb) : 0;
                double size = Math.max(Math.abs(stepA), Math.abs(stepB));
                if (!(size > 1e-13)) {
                    break;
                }
                double scale = Math.min(1, 0.3 / size);
                double oldA = lnA;
                double oldB = lnB;
                for (int halving = 0; halving < 30; halving++) {
                    lnA = oldA + scale * stepA;
                    lnB = oldB + scale * stepB;
                    if (sums(weights) <= before) {
                        break;
                    }
                    scale /= 2;
                }
            }
            return result(free, a, b);
        }

        private WornFit result(WornCurve.Identified free, boolean a, boolean b) {
            double squares = sums(weights());
            int spare = tests.size() - (a && b ? 2 : 1);
            double perDegree = spare > 0 ? squares / spare : 0;
            // tests that scatter more than their own uncertainties say speak for themselves
            double inflation = weighted ? Math.max(1, perDegree) : perDegree;
            double det = aa * bb - ab * ab;
            double factorA = Math.exp(lnA);
            double factorB = Math.exp(lnB);
            double varA = a ? (b ? bb / det : 1 / aa) * inflation * factorA * factorA : 0;
            double varB = b ? (a ? aa / det : 1 / bb) * inflation * factorB * factorB : 0;
            double cov = a && b ? -ab / det * inflation * factorA * factorB : 0;
            return new WornFit(free, factorA, factorB, varA, varB, cov);
        }

        /** Starts from the shut-off heads, if any, and from the test with the largest flow. */
        private void start(WornCurve.Identified free) {
            WornCurve.TestPoint open = tests.get(0);
            double b = 1;
            double highest = 0;
            boolean shut = false;
            for (WornCurve.TestPoint test : tests) {
                if (test.flowM3h() > open.flowM3h()) {
                    open = test;
                }
                highest = Math.max(highest, test.headM());
                if (test.flowM3h() == 0) {
                    shut = true;
                    b = test.headM() / reference.shutOffHeadM();
                }
            }
            if (free == WornCurve.Identified.FLOW_FACTOR) {
                b = 1;
                refuseOutside();
            } else if (!shut && highest >= reference.shutOffHeadM()) {
                b = 1.05 * highest / reference.shutOffHeadM();
            }
            double low = reference.lastHeadM();
            double high = reference.head(1e-3 * reference.lastFlowM3h());
            double head = Math.min(Math.max(open.headM() / b, low), high);
            lnA = free == WornCurve.Identified.HEAD_FACTOR ? 0 : Math.log(open.flowM3h() / reference.flow(head));
            lnB = Math.log(b);
        }

        private void refuseOutside() {
            for (int i = 0; i < tests.size(); i++) {
                double head = tests.get(i).headM();
                String field = "tests[" + i + "].headM";
                if (head >= reference.shutOffHeadM()) {
                    throw OutOfRange.aboveCurve(field, head, reference.shutOffHeadM());
                }
                if (head < reference.lastHeadM()) {
                    throw OutOfRange.belowCurve(field, head, reference.lastHeadM());
                }
            }
        }

        private double[] weights() {
            double[] weights = new double[tests.size()];
            double a = Math.exp(lnA);
            double b = Math.exp(lnB);
            for (int i = 0; i < weights.length; i++) {
                WornCurve.TestPoint t = tests.get(i);
                double slope = b / a * slope(t.flowM3h() / a);
                double byFlow = (t.headPerFlow() - slope) * t.flowUncertaintyM3h();
                double variance = byFlow * byFlow + t.headUncertaintyM() * t.headUncertaintyM();
                weights[i] = weighted && variance > 0 ? 1 / variance : 1;
            }
            return weights;
        }

        private double sums(double[] weights) {
            aa = bb = ab = ra = rb = 0;
            double squares = 0;
            double a = Math.exp(lnA);
            double b = Math.exp(lnB);
            for (int i = 0; i < weights.length; i++) {
                WornCurve.TestPoint t = tests.get(i);
                double q = t.flowM3h() / a;
                double model = b * head(q);
                double off = t.headM() - model;
                double byA = -b * slope(q) * q;
                aa += weights[i] * byA * byA;
                bb += weights[i] * model * model;
                ab += weights[i] * byA * model;
                ra += weights[i] * byA * off;
                rb += weights[i] * model * off;
                squares += weights[i] * off * off;
            }
            return squares;
        }

        /** The curve with a straight end, for the search only; the answer is refused if it needs it. */
        private double head(double q) {
            double last = reference.lastFlowM3h();
            return q <= last ? reference.head(q) : reference.lastHeadM() + (q - last) * slope(last);
        }

        private double slope(double q) {
            return reference.slope(Math.min(q, reference.lastFlowM3h()));
        }
    }
}
