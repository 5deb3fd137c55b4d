package freshet.wear;

import freshet.findings.Finding;
import freshet.pumps.Unit;
import freshet.readings.MeterLog;
import freshet.reliability.Lives;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What one unit went through in care: its days, its failures and, where its meter was read, its run hours.
 *
 * @param to the end of the day on which it was retired, or now
 * @param failures in care, oldest first
 * @param watch null when no run hours are known in care
 */
record UnitLife(
        long modelId,
        Instant from,
        Instant to,
        List<Failure> failures,
        @Nullable Watch watch) {

    /**
     * The run hours of a unit while it was in care and its meter read.
     *
     * @param entryHours lifetime hours at the later of coming into care and first reading
     * @param endHours lifetime hours last read in care
     * @param failureHours lifetime hours at each failure since; one after the last reading has the hours of that reading
     * @param failedBefore it failed in care before its hours were known
     * @param unplaced failures after the last reading
     */
    record Watch(
            Instant from,
            double entryHours,
            double endHours,
            List<Double> failureHours,
            boolean failedBefore,
            int unplaced) {

        double hoursRun() {
            return endHours - entryHours;
        }

        /** The hours of each failure counted from coming into care. */
        List<Double> failuresInCare() {
            return failureHours.stream().map(hours -> hours - entryHours).toList();
        }

        /** Whether its first failure in care, or that it has had none, can be counted: it ran in care, and had not failed before that. */
        boolean countsAsLife() {
            return !failedBefore && firstEnd() > entryHours;
        }

        private double firstEnd() {
            return failureHours.isEmpty() ? endHours : failureHours.get(0);
        }

        /** Its life until the first failure in care, under watch from its hours on entry. */
        Lives.Life life() {
            return new Lives.Life(firstEnd(), !failureHours.isEmpty(), entryHours);
        }
    }

    static UnitLife of(Unit unit, @Nullable MeterLog log, List<Finding> findings, Instant now) {
        ZoneId zone = unit.stand().zone();
        Instant from = unit.inCareFrom().atStartOfDay(zone).toInstant();
        LocalDate retired = unit.retiredOn();
        Instant end =
                retired == null ? now : retired.plusDays(1).atStartOfDay(zone).toInstant();
        Instant to = end.isAfter(now) ? now : end;
        List<Failure> failures = Failure.of(findings, from, to);
        return new UnitLife(unit.model().id(), from, to, failures, watch(log, from, to, failures));
    }

    private static @Nullable Watch watch(@Nullable MeterLog log, Instant from, Instant to, List<Failure> failures) {
        if (log == null) {
            return null;
        }
        Instant first = null;
        Instant last = null;
        for (MeterLog.Line line : log.lines()) {
            if (line.lifetime() != null) {
                first = first == null ? line.at() : first;
                last = line.at();
            }
        }
        if (first == null || last == null) {
            return null;
        }
        Instant begin = first.isBefore(from) ? from : first;
        Instant close = last.isAfter(to) ? to : last;
        Double entry = log.lifetimeAt(begin);
        Double end = log.lifetimeAt(close);
        if (begin.isAfter(close) || entry == null || end == null) {
            return null;
        }
        List<Failure> since = failures.stream()
                .filter(failure -> !failure.downAt().isBefore(begin))
                .toList();
        List<Double> hours = since.stream()
                .map(failure -> failure.downAt().isAfter(close) ? null : log.lifetimeAt(failure.downAt()))
                .map(at -> at == null ? end : at)
                .toList();
        int unplaced = (int) since.stream()
                .filter(failure -> failure.downAt().isAfter(close))
                .count();
        return new Watch(begin, entry, end, hours, since.size() < failures.size(), unplaced);
    }

    double calendarHours() {
        return hoursSince(from);
    }

    double hoursSince(Instant moment) {
        return Math.max(0, (to.toEpochMilli() - moment.toEpochMilli()) / 3_600_000.0);
    }
}
