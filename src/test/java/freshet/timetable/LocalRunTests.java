package freshet.timetable;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import java.text.ParseException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.Year;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.time.zone.ZoneOffsetTransition;
import java.time.zone.ZoneRules;
import java.util.ArrayList;
import java.util.Date;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TimeZone;
import org.junit.jupiter.api.Test;
import org.quartz.CronExpression;
import org.quartz.CronTrigger;
import org.quartz.spi.OperableTrigger;
import org.springframework.beans.factory.annotation.Autowired;

/** The days on which clocks are moved, in every zone that this Java knows: its rules are the tz database's. */
@FreshetTest
class LocalRunTests {

    private static final int FROM = 2025;
    private static final int UNTIL = 2036;

    @Autowired
    List<LocalRun> localRuns;

    @Test
    void plansOnceOnEachDayOfEveryZone() throws ParseException {
        CronExpression morning = new CronExpression(of("morning").times());
        List<String> wrong = new ArrayList<>();
        int days = 0;
        for (ZoneId zone : zones()) {
            for (LocalDate day : daysAroundChanges(zone)) {
                List<ZonedDateTime> times = times(morning, zone, day);
                days++;
                if (times.size() != 1 || !times.get(0).toLocalTime().equals(LocalTime.of(4, 30))) {
                    wrong.add(zone + " " + day + " " + times);
                }
            }
        }
        assertThat(days).isGreaterThan(5_000);
        assertThat(wrong).isEmpty();
    }

    @Test
    void turnsEveryDayWithinItsFirstHourAndAMinute() throws ParseException {
        CronExpression turn = new CronExpression(of("day").times());
        List<String> wrong = new ArrayList<>();
        for (ZoneId zone : zones()) {
            for (LocalDate day : daysAroundChanges(zone)) {
                List<ZonedDateTime> times = times(turn, zone, day);
                ZonedDateTime begin = day.atStartOfDay(zone);
                if (times.isEmpty() || times.get(0).isAfter(begin.plusMinutes(61))) {
                    wrong.add(zone + " " + day + " " + times);
                }
            }
        }
        assertThat(wrong).isEmpty();
    }

    /** Why planning is not at half past three: Athens skips it in spring. The check above would see it. */
    @Test
    void wouldMissADayAtAnHourThatAClockSkips() throws ParseException {
        ZoneId athens = ZoneId.of("Europe/Athens");
        CronExpression early = new CronExpression("0 30 3 * * ?");
        assertThat(daysAroundChanges(athens).stream()
                        .filter(day -> times(early, athens, day).isEmpty()))
                .contains(LocalDate.of(2027, 3, 28));
    }

    @Test
    void makesUpOneRunForManyDaysOfDowntime() {
        ZoneId chicago = ZoneId.of("America/Chicago");
        Instant longAgo = Instant.now().minus(Duration.ofDays(5));
        for (LocalRun run : localRuns) {
            OperableTrigger trigger = (OperableTrigger) run.in(chicago)
                    .getTriggerBuilder()
                    .startAt(Date.from(longAgo))
                    .build();
            trigger.computeFirstFireTime(null);
            trigger.updateAfterMisfire(null);
            Instant madeUp = trigger.getNextFireTime().toInstant();
            trigger.triggered(null);

            assertThat(madeUp).isBetween(Instant.now().minusSeconds(60), Instant.now());
            assertThat(trigger.getNextFireTime().toInstant()).isAfter(Instant.now());
            assertThat(((CronTrigger) trigger).getTimeZone()).isEqualTo(TimeZone.getTimeZone("America/Chicago"));
        }
    }

    private LocalRun of(String name) {
        return localRuns.stream()
                .filter(each -> each.run().getKey().getName().equals(name))
                .findFirst()
                .orElseThrow();
    }

    /** One of those that keep the same clock. */
    private static Iterable<ZoneId> zones() {
        Map<ZoneRules, ZoneId> zones = new LinkedHashMap<>();
        ZoneId.getAvailableZoneIds().stream()
                .sorted()
                .map(ZoneId::of)
                .forEach(zone -> zones.putIfAbsent(zone.getRules(), zone));
        return zones.values();
    }

    private static List<LocalDate> daysAroundChanges(ZoneId zone) {
        List<LocalDate> days = new ArrayList<>(List.of(Year.of(FROM).atDay(100)));
        Instant end = Year.of(UNTIL).atDay(1).atStartOfDay().toInstant(ZoneOffset.UTC);
        ZoneOffsetTransition change = zone.getRules()
                .nextTransition(Year.of(FROM).atDay(1).atStartOfDay().toInstant(ZoneOffset.UTC));
        while (change != null && change.getInstant().isBefore(end)) {
            LocalDate day = change.getDateTimeBefore().toLocalDate();
            days.addAll(List.of(day.minusDays(1), day, day.plusDays(1), day.plusDays(2)));
            change = zone.getRules().nextTransition(change.getInstant());
        }
        return days;
    }

    private static List<ZonedDateTime> times(CronExpression expression, ZoneId zone, LocalDate day) {
        expression.setTimeZone(TimeZone.getTimeZone(zone));
        Instant end = day.plusDays(1).atStartOfDay(zone).toInstant();
        List<ZonedDateTime> times = new ArrayList<>();
        Date at = Date.from(day.atStartOfDay(zone).toInstant().minusSeconds(1));
        for (at = expression.getNextValidTimeAfter(at);
                at.toInstant().isBefore(end);
                at = expression.getNextValidTimeAfter(at)) {
            times.add(at.toInstant().atZone(zone));
        }
        return times;
    }
}
