package freshet.hydraulics;

import java.util.List;

/**
 * A line's losses with everything that does not depend on the flow worked out once; made for one calculation, not shared
 * between threads: {@link #at(double)} leaves its answers in the fields.
 */
final class Losses {

    /** Per section: velocity (m/s), Reynolds number and friction head over f Q² or over Q^1.852, all per m³/h. */
    private final double[] velocity;

    private final double[] reynolds;
    private final double[] friction;
    /** Relative roughness; NaN for a Hazen-Williams section. */
    private final double[] roughness;
    /** Head over Q² of a section's own K and of the change of bore at its inlet, m per (m³/h)². */
    private final double[] fittings;

    private final double allFittings;
    private final double exit;

    /** Head of all losses at the last flow asked, m. */
    double headM;
    /** Its derivative, m per m³/h. */
    double slope;

    private static final double HW_POWER = 1.852;
    private static final double SECONDS = 3600;

    Losses(Line line) {
        List<Section> sections = line.sections();
        int n = sections.size();
        velocity = new double[n];
        reynolds = new double[n];
        friction = new double[n];
        roughness = new double[n];
        fittings = new double[n];
        double viscosity = Water.kinematicViscosity(line.waterTemperatureC());
        double before = line.pumpOutletMm() == null ? 0 : line.pumpOutletMm();
        double sum = 0;
        for (int i = 0; i < n; i++) {
            Section section = sections.get(i);
            double bore = section.innerDiameterMm();
            double d = bore / 1000;
            velocity[i] = velocityPerFlow(bore);
            double head = velocityHead(velocity[i]);
            reynolds[i] = velocity[i] * d / viscosity;
            Double rough = section.roughnessMm();
            Double c = section.hazenWilliamsC();
            if (rough != null) {
                roughness[i] = rough / bore;
                friction[i] = section.lengthM() / d * head;
            } else {
                roughness[i] = Double.NaN;
                friction[i] = 10.67 * section.lengthM() / (Math.pow(SECONDS * c, HW_POWER) * Math.pow(d, 4.8704));
            }
            double change = 0;
            if (before > 0 && before != bore) {
                change = Line.boreChangeCoefficient(before, bore)
                        * velocityHead(velocityPerFlow(Math.min(before, bore)));
            }
            fittings[i] = section.lossCoefficient() * head + change;
            sum += fittings[i];
            before = bore;
        }
        allFittings = sum;
        exit = before > 0 ? line.exitLossCoefficient() * velocityHead(velocityPerFlow(before)) : 0;
    }

    private static double velocityPerFlow(double boreMm) {
        double d = boreMm / 1000;
        return 4 / (Math.PI * d * d * SECONDS);
    }

    private static double velocityHead(double velocity) {
        return velocity * velocity / (2 * Water.GRAVITY_MS2);
    }

    /** Works out the loss and its derivative at a flow of 0 or more, m³/h. */
    Losses at(double flow) {
        double fixed = (allFittings + exit) * flow;
        double head = fixed * flow;
        double rise = 2 * fixed;
        for (int i = 0; i < friction.length; i++) {
            double k = friction[i];
            double rough = roughness[i];
            double re = reynolds[i] * flow;
            if (k == 0) {
                continue;
            }
            if (rough != rough) {
                double perFlow = k * Math.pow(flow, HW_POWER - 1);
                head += perFlow * flow;
                rise += HW_POWER * perFlow;
            } else if (re < FrictionFactor.LAMINAR_END) {
                double perFlow = 64 * k / reynolds[i];
                head += perFlow * flow;
                rise += perFlow;
            } else {
                double f = FrictionFactor.at(re, rough);
                double perFlow = f * k * flow;
                head += perFlow * flow;
                rise += (2 + FrictionFactor.logSlope(re, rough, f)) * perFlow;
            }
        }
        headM = head;
        slope = rise;
        return this;
    }

    double exitAt(double flow) {
        return exit * flow * flow;
    }

    double fittingsAt(double flow) {
        return allFittings * flow * flow;
    }

    /** What one section takes at a flow of 0 or more, m³/h. */
    LineLoss.SectionFlow section(int i, double flow) {
        double re = reynolds[i] * flow;
        double rough = roughness[i];
        Double factor = null;
        double head;
        if (rough != rough) {
            head = friction[i] * Math.pow(flow, HW_POWER);
        } else if (re < FrictionFactor.LAMINAR_END) {
            head = 64 * friction[i] / reynolds[i] * flow;
            factor = re < FrictionFactor.LOWEST_REYNOLDS ? null : Double.valueOf(64 / re);
        } else {
            double f = FrictionFactor.at(re, rough);
            head = f * friction[i] * flow * flow;
            factor = f;
        }
        double own = fittings[i] * flow * flow;
        return new LineLoss.SectionFlow(velocity[i] * flow, re, factor, head + own, head, own);
    }

    /** Flows at which the friction law of a Darcy-Weisbach section changes, m³/h. */
    double[] changes() {
        double[] flows = new double[2 * reynolds.length];
        for (int i = 0; i < reynolds.length; i++) {
            flows[2 * i] = FrictionFactor.LAMINAR_END / reynolds[i];
            flows[2 * i + 1] = FrictionFactor.TURBULENT_START / reynolds[i];
        }
        return flows;
    }
}
