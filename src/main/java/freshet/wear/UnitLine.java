package freshet.wear;

import freshet.findings.Finding;
import freshet.readings.ComparedTest;
import freshet.readings.MeterLog;
import freshet.reliability.CapacityReading;
import freshet.reliability.CapacityTrend;
import freshet.reliability.Interval;
import freshet.reliability.PooledWear;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The tests of one unit against its run hours, which of them count, and the line through those.
 *
 * <p>A closed finding of severity 2 or more restarts the line: tests made before it was closed are left out. That goes by time and not by hours, so
 * that a test on either side of a repair made at one meter reading falls on its side.
 *
 * @param restart the repair since which the tests count; null when all count
 * @param errorAsStated standard error of the slope if the stated doubts of the tests are right; null without a slope
 */
public record UnitLine(
        List<Tested> tests,
        List<Repair> repairs,
        @Nullable Repair restart,
        List<CapacityReading> used,
        CapacityTrend trend,
        @Nullable Double errorAsStated,
        WearWord word) {

    /** A stated doubt below this is no measurement's. */
    private static final double LEAST_UNCERTAINTY = 1e-4;

    static UnitLine of(
            List<ComparedTest> compared, @Nullable MeterLog log, List<Finding> findings, WearQuestion asked) {
        List<Repair> repairs = findings.stream()
                .filter(finding -> finding.severity() >= Repair.LEAST_SEVERITY && finding.closedAt() != null)
                .sorted(Comparator.comparing(UnitLine::closedAt))
                .map(finding -> new Repair(finding, HoursAt.of(log, closedAt(finding))))
                .toList();
        Repair last = asked.through() || repairs.isEmpty() ? null : repairs.get(repairs.size() - 1);
        boolean restarts =
                last != null && compared.stream().anyMatch(test -> test.at().isBefore(closedAt(last.finding())));
        Repair restart = restarts ? last : null;
        List<Tested> tests =
                compared.stream().map(test -> tested(test, log, restart)).toList();
        List<CapacityReading> used = CapacityReading.inUsualUncertainties(readings(tests));
        double now = log == null || log.lifetime() == null ? 0 : log.lifetime().doubleValue();
        CapacityTrend trend = CapacityTrend.of(used, List.of(), asked.threshold(), now, WearQuestion.LEVEL, List.of());
        Double stated = CapacityReading.slopeErrorAsStated(readings(tests));
        return new UnitLine(tests, repairs, restart, used, trend, stated, word(trend, stated));
    }

    private static Tested tested(ComparedTest test, @Nullable MeterLog log, @Nullable Repair restart) {
        HoursAt hours = HoursAt.of(log, test.at());
        Tested.Use use = Tested.Use.COUNTS;
        if (test.fraction() == null) {
            use = Tested.Use.NO_FRACTION;
        } else if (hours == null) {
            use = Tested.Use.NO_HOURS;
        } else if (restart != null && test.at().isBefore(closedAt(restart.finding()))) {
            use = Tested.Use.BEFORE_REPAIR;
        }
        return new Tested(test, hours, use);
    }

    private static Instant closedAt(Finding finding) {
        return finding.closedAt() == null ? Instant.MAX : finding.closedAt();
    }

    private static List<CapacityReading> readings(List<Tested> tests) {
        List<CapacityReading> readings = new ArrayList<>();
        for (Tested tested : tests) {
            Double fraction = tested.test().fraction();
            Double uncertainty = tested.test().standardUncertainty();
            if (tested.use() == Tested.Use.COUNTS
                    && tested.hours() != null
                    && fraction != null
                    && uncertainty != null) {
                readings.add(new CapacityReading(
                        tested.hours().hours(), fraction, Math.max(LEAST_UNCERTAINTY, uncertainty)));
            }
        }
        return readings;
    }

    private static WearWord word(CapacityTrend trend, @Nullable Double errorAsStated) {
        if (trend.n() == 0) {
            return WearWord.NOTHING;
        }
        return switch (trend.verdict()) {
            case TOO_FEW -> WearWord.TOO_FEW;
            case NO_TREND_YET -> WearWord.NO_TREND_YET;
            case WEARING -> beyondStatedDoubt(trend, errorAsStated) ? WearWord.WEARING : WearWord.WITHIN_DOUBT;
        };
    }

    /** Few tests can lie on a line by luck: a fall is called wear only when it is also more than their own stated doubt explains. */
    private static boolean beyondStatedDoubt(CapacityTrend trend, @Nullable Double errorAsStated) {
        if (trend.slopePerHour() == null || errorAsStated == null) {
            return false;
        }
        Interval stated =
                new PooledWear.UnitSlope(null, trend.slopePerHour(), errorAsStated).interval(WearQuestion.LEVEL);
        return stated != null && stated.upper() != null && stated.upper() < 0;
    }

    /** The slope with the larger of its two errors, by the scatter and as stated; null below three tests. */
    PooledWear.@Nullable OwnSlope slope() {
        if (trend.n() < 3 || trend.slopePerHour() == null || trend.seSlope() == null || errorAsStated == null) {
            return null;
        }
        return new PooledWear.OwnSlope(trend.slopePerHour(), Math.max(trend.seSlope(), errorAsStated));
    }

    /** The same line with its bands at these hours. */
    CapacityTrend at(WearQuestion asked, double nowHours, List<Double> hours) {
        return CapacityTrend.of(used, List.of(), asked.threshold(), nowHours, WearQuestion.LEVEL, hours);
    }

    /** Usual standard uncertainty of a test that counts: the median, as the trend takes it; null when none counts. */
    public @Nullable Double usualUncertainty() {
        List<Double> stated = readings(tests).stream()
                .map(CapacityReading::standardUncertainty)
                .sorted()
                .toList();
        return stated.isEmpty() ? null : stated.get(stated.size() / 2);
    }
}
