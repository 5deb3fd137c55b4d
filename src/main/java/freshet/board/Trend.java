package freshet.board;

import freshet.readings.ComparedTest;
import freshet.reliability.CapacityReading;
import freshet.reliability.CapacityTrend;
import freshet.reliability.OutOfRange;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** When the remaining capacity of a unit comes to be low by its tests and its use, as it looked at each test. */
record Trend(List<ComparedTest> tests, Series hours, SiteDays site) {

    /** Of reference flow; below it a pump is derated. Common practice, no source. */
    private static final double LOW = 0.80;

    private static final double LEVEL = 0.95;
    private static final double LEAST_UNCERTAINTY = 1e-4;
    /** Farther away than this is as good as never. */
    private static final double NEVER = 1e6;

    /** Days from each test on until the line through it and those before it is at 80 %; a test from which no wear shows says never. */
    List<Figure> daysToLow() {
        List<Figure> figures = new ArrayList<>();
        List<CapacityReading> readings = new ArrayList<>();
        if (hours.empty()) {
            return figures;
        }
        for (ComparedTest test : tests) {
            Double fraction = test.fraction();
            Double uncertainty = test.standardUncertainty();
            if (fraction != null && uncertainty != null) {
                readings.add(
                        new CapacityReading(hours.at(test.at()), fraction, Math.max(LEAST_UNCERTAINTY, uncertainty)));
                Double days = days(readings, test);
                figures.add(new Figure(
                        String.valueOf(test.testId()),
                        test.at(),
                        site.day(test.at()),
                        Objects.requireNonNullElse(days, NEVER)));
            }
        }
        return figures;
    }

    private @Nullable Double days(List<CapacityReading> readings, ComparedTest test) {
        double now = hours.at(test.at());
        Double rate = hours.upTo(test.at()).rate(Storage.NEVER);
        if (rate == null || rate <= 0) {
            return null;
        }
        try {
            CapacityTrend trend = CapacityTrend.of(
                    CapacityReading.inUsualUncertainties(readings), List.of(), LOW, now, LEVEL, List.of());
            Double left = trend.hoursToThreshold().remainingEstimate();
            return trend.verdict() == CapacityTrend.Verdict.WEARING && left != null ? (Double) (left / rate) : null;
        } catch (OutOfRange curveOrHoursWereChanged) {
            return null;
        }
    }
}
