package freshet.reliability;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One measured remaining capacity of a unit.
 *
 * @param runHours lifetime run hours when it was measured, 0 to 1e9 h
 * @param remainingFraction share of the reference (1 = as new), 0 to 1e6, so that percent or a plain flow do as well
 * @param standardUncertainty of that share, 1e-6 to 1e3, or null when unknown
 */
public record CapacityReading(
        double runHours, double remainingFraction, @Nullable Double standardUncertainty) {

    public CapacityReading(double runHours, double remainingFraction) {
        this(runHours, remainingFraction, null);
    }

    /**
     * The same readings with uncertainties divided by their median, so that the "one further reading of weight 1" of a trend is a usual reading
     * of this unit. Nothing else in a trend changes but the scale of its residual standard deviation. Left as they are unless every reading has one.
     */
    public static List<CapacityReading> inUsualUncertainties(List<CapacityReading> readings) {
        List<Double> known = new ArrayList<>();
        for (CapacityReading reading : readings) {
            if (reading.standardUncertainty() != null) {
                known.add(reading.standardUncertainty());
            }
        }
        if (known.isEmpty() || known.size() < readings.size()) {
            return List.copyOf(readings);
        }
        known.sort(null);
        double usual = known.get(known.size() / 2);
        List<CapacityReading> scaled = new ArrayList<>();
        for (CapacityReading reading : readings) {
            double own = reading.standardUncertainty() == null ? usual : reading.standardUncertainty();
            scaled.add(new CapacityReading(reading.runHours(), reading.remainingFraction(), own / usual));
        }
        return List.copyOf(scaled);
    }

    /**
     * Standard error of the slope of the line through these readings if their stated uncertainties are right and independent, per hour: 1/√(Σ w (x - x̄)²)
     * with w = 1/u². Where it is larger than the error that the scatter gives, the readings lie nearer to the line than they can be relied on to.
     *
     * @param readings as for {@link CapacityTrend#of}
     * @return null unless every reading states its uncertainty and two lie at different hours
     * @throws OutOfRange for a number outside its range
     */
    public static @Nullable Double slopeErrorAsStated(List<CapacityReading> readings) {
        List<CapacityReading> checked = new ArrayList<>();
        for (CapacityReading reading : Limits.list("readings", readings, 0, CapacityTrend.MOST_READINGS)) {
            checked.add(reading.checked("readings[" + checked.size() + "]"));
        }
        if (checked.stream().anyMatch(reading -> reading.standardUncertainty() == null)) {
            return null;
        }
        StraightLine line = StraightLine.through(
                checked.stream().mapToDouble(CapacityReading::runHours).toArray(),
                checked.stream().mapToDouble(CapacityReading::remainingFraction).toArray(),
                checked.stream().mapToDouble(CapacityReading::weight).toArray(),
                Limits.SHORTEST_HOURS);
        return line == null ? null : Limits.finite(1 / Math.sqrt(line.sxx()));
    }

    /** 1/u², or 1 when the uncertainty is not known. */
    double weight() {
        return standardUncertainty == null ? 1 : 1 / (standardUncertainty * standardUncertainty);
    }

    CapacityReading checked(String field) {
        Limits.hours(field + ".runHours", runHours);
        Limits.within(field + ".remainingFraction", remainingFraction, 0, 1e6, "of the reference");
        if (standardUncertainty != null) {
            Limits.within(field + ".standardUncertainty", standardUncertainty, 1e-6, 1e3, "of the reference");
        }
        return this;
    }
}
