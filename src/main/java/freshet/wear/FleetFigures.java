package freshet.wear;

import freshet.reliability.FleetFailureTrend;
import freshet.reliability.Indicators;
import freshet.reliability.Interval;
import freshet.reliability.Lives;
import freshet.reliability.Mtbf;
import freshet.reliability.ProductLimit;
import freshet.reliability.Recurrence;
import freshet.reliability.Termination;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a fleet, or the units of one model, went through in care, in figures. Each figure is null where there is not enough to say.
 *
 * @param units that ever were in care, retired ones too
 * @param metered units whose run hours are known in care
 * @param failures of all units
 * @param hoursRun in care, of the metered units together
 * @param meteredFailures failures of the metered units while their hours were known
 * @param leftOut what the lives leave out and why
 * @param lives until the first failure in care, with the hours on entry
 * @param mtbf null when no hours were run
 * @param recurrence of failures by hours run in care
 * @param trend of failures by hours run in care
 * @param calendar indicators by the calendar, of all units
 * @param operating indicators by run hours, of the metered units
 * @param hoursPerYear run by a metered unit on the mean
 * @param failuresPerYear of a unit on the mean
 */
public record FleetFigures(
        int units,
        int metered,
        int failures,
        double hoursRun,
        int meteredFailures,
        LeftOut leftOut,
        @Nullable Lives lives,
        @Nullable Mtbf mtbf,
        @Nullable Recurrence recurrence,
        @Nullable FleetFailureTrend trend,
        @Nullable Interval trendInterval,
        @Nullable Indicators calendar,
        @Nullable Indicators operating,
        @Nullable Double hoursPerYear,
        @Nullable Double failuresPerYear) {

    /** Most units in one set of figures. */
    public static final int MOST_UNITS = 100_000;

    private static final double HOURS_PER_YEAR = 365.25 * 24;
    private static final double SHORTEST = 1e-6;

    /**
     * Units that no life was made of, by the first reason that holds, and failures at a loose place.
     *
     * @param noHours no run hours in care are known
     * @param failedBefore it failed in care before its hours were known
     * @param neverRan it ran no hour in care, or failed before it ran one
     * @param unplaced failures after the last reading, counted at the hours of that
     */
    public record LeftOut(int noHours, int failedBefore, int neverRan, int unplaced) {}

    /** At some hours fewer units than this were under watch, and more at later ones: the curve of lives hangs on single pumps there. */
    public static final int FEW_AT_RISK = 5;

    /** Whether the curve of lives begins thinly, because most units came into care with hours on their meter. */
    public boolean beginsThinly() {
        if (lives == null) {
            return false;
        }
        boolean few = false;
        for (ProductLimit.Step step : lives.productLimit()) {
            if (few && step.atRisk() >= FEW_AT_RISK) {
                return true;
            }
            few |= step.atRisk() < FEW_AT_RISK;
        }
        return false;
    }

    static FleetFigures of(List<UnitLife> fleet) {
        List<UnitLife> metered =
                fleet.stream().filter(unit -> unit.watch() != null).toList();
        List<UnitLife.Watch> watches = metered.stream().map(UnitLife::watch).toList();
        List<Lives.Life> lives = watches.stream()
                .filter(UnitLife.Watch::countsAsLife)
                .map(UnitLife.Watch::life)
                .toList();
        double hoursRun = watches.stream().mapToDouble(UnitLife.Watch::hoursRun).sum();
        int failed =
                watches.stream().mapToInt(watch -> watch.failureHours().size()).sum();
        int failures = fleet.stream().mapToInt(unit -> unit.failures().size()).sum();
        List<Recurrence.WatchedUnit> repaired = watches.stream()
                .map(watch -> new Recurrence.WatchedUnit(watch.failuresInCare(), watch.hoursRun()))
                .toList();
        FleetFailureTrend trend = repaired.isEmpty() ? null : FleetFailureTrend.of(afterNew(repaired));
        double unitYears = fleet.stream().mapToDouble(UnitLife::calendarHours).sum() / HOURS_PER_YEAR;
        double meteredYears = metered.stream()
                        .mapToDouble(unit -> unit.hoursSince(unit.watch().from()))
                        .sum()
                / HOURS_PER_YEAR;
        return new FleetFigures(
                fleet.size(),
                metered.size(),
                failures,
                hoursRun,
                failed,
                leftOut(fleet, watches),
                lives.isEmpty() ? null : Lives.of(lives, WearQuestion.LEVEL),
                hoursRun < SHORTEST ? null : Mtbf.of(hoursRun, failed, Termination.TIME, WearQuestion.LEVEL),
                repaired.isEmpty() ? null : Recurrence.of(repaired, WearQuestion.LEVEL),
                trend,
                trend == null ? null : trend.shapeInterval(WearQuestion.LEVEL),
                fleet.isEmpty()
                        ? null
                        : Indicators.of(
                                fleet.stream().map(FleetFigures::byCalendar).toList()),
                metered.isEmpty()
                        ? null
                        : Indicators.of(
                                metered.stream().map(FleetFigures::byHours).toList()),
                meteredYears > 0 ? (Double) (hoursRun / meteredYears) : null,
                unitYears > 0 ? (Double) (failures / unitYears) : null);
    }

    private static LeftOut leftOut(List<UnitLife> fleet, List<UnitLife.Watch> watches) {
        int failedBefore =
                (int) watches.stream().filter(UnitLife.Watch::failedBefore).count();
        int counted =
                (int) watches.stream().filter(UnitLife.Watch::countsAsLife).count();
        return new LeftOut(
                fleet.size() - watches.size(),
                failedBefore,
                watches.size() - failedBefore - counted,
                watches.stream().mapToInt(UnitLife.Watch::unplaced).sum());
    }

    /** Failures before a unit ran an hour in care have no place in a law of powers of the hours. */
    private static List<Recurrence.WatchedUnit> afterNew(List<Recurrence.WatchedUnit> repaired) {
        return repaired.stream()
                .map(unit -> new Recurrence.WatchedUnit(
                        unit.eventHours().stream()
                                .filter(hours -> hours >= SHORTEST)
                                .toList(),
                        unit.endHours()))
                .toList();
    }

    private static Indicators.UnitRecord byCalendar(UnitLife unit) {
        return new Indicators.UnitRecord(unit.calendarHours(), 0, downs(unit, unit.failures()));
    }

    private static Indicators.UnitRecord byHours(UnitLife unit) {
        UnitLife.Watch watch = unit.watch();
        if (watch == null) {
            throw new IllegalArgumentException("a unit without run hours");
        }
        return new Indicators.UnitRecord(
                unit.hoursSince(watch.from()),
                watch.hoursRun(),
                downs(
                        unit,
                        unit.failures().stream()
                                .filter(failure -> !failure.downAt().isBefore(watch.from()))
                                .toList()));
    }

    private static List<Indicators.Down> downs(UnitLife unit, List<Failure> failures) {
        return failures.stream()
                .map(failure ->
                        new Indicators.Down(Indicators.DownType.FAILURE, failure.downHours(unit.to()), null, null))
                .toList();
    }
}
