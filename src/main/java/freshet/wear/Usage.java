package freshet.wear;

import freshet.readings.MeterLog;
import freshet.reliability.OutOfRange;
import freshet.reliability.UsageRate;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How much a unit runs, in season and out, by its meter readings and the windows of the place where it stands now.
 *
 * @param parts the parts of the year that have readings
 * @param hoursPerDay over all days read
 * @param seasonHours hours in one whole season at this rate
 */
public record Usage(
        List<UsageRate.PeriodUse<SeasonPart>> parts,
        double hoursPerDay,
        LocalDate from,
        LocalDate to,
        int seasonDays,
        double seasonHours,
        UsageRate<SeasonPart> rate) {

    /** The use so far; null when readings of fewer than two days stand, or they show more hours than the days have. */
    static @Nullable Usage of(@Nullable MeterLog log, ZoneId zone, SeasonCalendar calendar, LocalDate today) {
        List<UsageRate.MeterReading> readings = log == null
                ? List.of()
                : log.lines().stream()
                        .filter(line -> line.lifetime() != null)
                        .map(line -> new UsageRate.MeterReading(
                                LocalDate.ofInstant(line.at(), zone),
                                line.lifetime().doubleValue()))
                        .toList();
        if (readings.isEmpty()) {
            return null;
        }
        try {
            UsageRate<SeasonPart> rate = UsageRate.of(readings, calendar::part);
            Double perDay = rate.runHoursPerDay();
            if (perDay == null) {
                return null;
            }
            double inSeason = rate.periods().stream()
                    .filter(use -> use.period() != SeasonPart.OUT_OF_SEASON)
                    .mapToDouble(UsageRate.PeriodUse::runHoursPerDay)
                    .findFirst()
                    .orElse(perDay);
            int days = calendar.seasonDays(today);
            return new Usage(
                    rate.periods(),
                    perDay,
                    readings.get(0).date(),
                    readings.get(readings.size() - 1).date(),
                    days,
                    days * inSeason,
                    rate);
        } catch (OutOfRange fasterThanTheClock) {
            return null;
        }
    }
}
