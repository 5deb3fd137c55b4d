package freshet.timetable;

import static freshet.care.CareYard.CHICAGO;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import freshet.FreshetTest;
import freshet.care.CareYard;
import freshet.people.NotFound;
import freshet.places.Places;
import freshet.places.Site;
import freshet.places.SiteDraft;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Date;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.quartz.CronScheduleBuilder;
import org.quartz.CronTrigger;
import org.quartz.DisallowConcurrentExecution;
import org.quartz.JobDetail;
import org.quartz.Scheduler;
import org.quartz.SchedulerException;
import org.quartz.Trigger;
import org.quartz.TriggerBuilder;
import org.quartz.TriggerKey;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.MessageSource;
import org.springframework.jdbc.core.simple.JdbcClient;

@FreshetTest
class TimetableTests {

    private static final ZoneId AUCKLAND = ZoneId.of("Pacific/Auckland");

    @Autowired
    Timetable timetable;

    @Autowired
    Scheduler scheduler;

    @Autowired
    List<JobDetail> runs;

    @Autowired
    List<Trigger> declared;

    @Autowired
    Places places;

    @Autowired
    CareYard yard;

    @Autowired
    MessageSource messages;

    @Autowired
    JdbcClient database;

    /** The scheduler's tables are not cleaned between tests; without a site no zone has a time. */
    @BeforeEach
    void noPlaces() {
        timetable.drawUp();
        assertThat(local()).isEmpty();
    }

    private List<String> local() {
        return stored("where time_zone_id <> 'UTC'");
    }

    /** Whole rows, so that a trigger that was written anew shows by its start. */
    private List<String> stored(String which) {
        return database.sql(
                        "select concat_ws(' ', c.trigger_name, c.time_zone_id, c.cron_expression, t.start_time, t.next_fire_time)"
                                + " from qrtz_cron_triggers c join qrtz_triggers t using (sched_name, trigger_group, trigger_name) "
                                + which + " order by 1")
                .query(String.class)
                .list();
    }

    private List<String> names() throws SchedulerException {
        return local().stream()
                .map(row -> row.replaceAll(" \\S+/.*", "") + " " + row.split(" ")[1])
                .toList();
    }

    @Test
    void givesEachZoneItsTimesOnceHoweverManySitesItHas() throws SchedulerException {
        yard.brackenfold();
        yard.site("Quay", CHICAGO);
        yard.site("South", AUCKLAND);
        timetable.drawUp();

        assertThat(names())
                .containsExactly(
                        "day America/Chicago",
                        "day Pacific/Auckland",
                        "morning America/Chicago",
                        "morning Pacific/Auckland");
        CronTrigger morning =
                (CronTrigger) scheduler.getTrigger(TriggerKey.triggerKey("morning Pacific/Auckland", "board"));
        assertThat(morning.getNextFireTime().toInstant().atZone(AUCKLAND).toLocalTime())
                .isEqualTo("04:30");
        assertThat(morning.getNextFireTime().toInstant()).isAfter(Instant.now());
    }

    @Test
    void touchesNothingThatStandsAsItShould() {
        yard.brackenfold();
        timetable.drawUp();
        List<String> before = stored("");
        timetable.drawUp();
        assertThat(stored("")).isEqualTo(before).hasSizeGreaterThan(2);
    }

    @Test
    void followsASiteIntoAnotherZone() throws SchedulerException {
        Site site = yard.brackenfold();
        timetable.drawUp();
        places.changeSite(
                site.id(), site.version(), new SiteDraft(site.name(), AUCKLAND, null, null, List.of()), yard.ilse());
        timetable.drawUp();
        assertThat(names()).containsExactly("day Pacific/Auckland", "morning Pacific/Auckland");
    }

    @Test
    void mendsATimeThatIsDeclaredOtherwiseAndDropsOneThatNoLongerIs() throws SchedulerException {
        yard.brackenfold();
        timetable.drawUp();
        List<String> right = local();
        CronTrigger morning =
                (CronTrigger) scheduler.getTrigger(TriggerKey.triggerKey("morning America/Chicago", "board"));
        scheduler.rescheduleJob(
                morning.getKey(),
                morning.getTriggerBuilder()
                        .startAt(Date.from(Instant.now().minusSeconds(400_000)))
                        .withSchedule(
                                CronScheduleBuilder.cronSchedule("0 0 12 * * ?").inTimeZone(morning.getTimeZone()))
                        .build());
        scheduler.scheduleJob(TriggerBuilder.newTrigger()
                .withIdentity("hourly", "board")
                .forJob("plan", "board")
                .withSchedule(CronScheduleBuilder.cronSchedule("0 4 * * * ?"))
                .build());

        timetable.drawUp();
        assertThat(local().stream().map(row -> row.replaceAll(" \\d+ (\\d+)$", " $1")))
                .isEqualTo(right.stream()
                        .map(row -> row.replaceAll(" \\d+ (\\d+)$", " $1"))
                        .toList());
        assertThat(scheduler.checkExists(TriggerKey.triggerKey("hourly", "board")))
                .isFalse();
    }

    @Test
    void isDrawnUpOnceWhenSeveralNodesDoSoAtTheSameMoment() throws Exception {
        yard.brackenfold();
        yard.site("South", AUCKLAND);
        ExecutorService four = Executors.newFixedThreadPool(4);
        Callable<Void> drawingUp = () -> {
            timetable.drawUp();
            return null;
        };
        try {
            for (Future<Void> each : four.invokeAll(List.of(drawingUp, drawingUp, drawingUp, drawingUp))) {
                each.get();
            }
        } finally {
            four.shutdownNow();
        }
        assertThat(names()).hasSize(4);
    }

    @Test
    void refusesToRunWhatIsNotThere() {
        yard.brackenfold();
        for (List<String> unknown : List.of(
                List.of("board", "morning", "Pacific/Auckland"),
                List.of("board", "morning", ""),
                List.of("board", "plan", "America/Chicago"),
                List.of("board", "nothing", ""))) {
            assertThatExceptionOfType(NotFound.class)
                    .isThrownBy(() -> timetable.runNow(unknown.get(0), unknown.get(1), unknown.get(2), yard.ilse()));
        }
    }

    /** Whatever room it comes from: a run may be cut off and missed, is never done by two at once, and is called by a name on its page. */
    @Test
    void knowsOnlyRunsThatCanBeCutOffAndNamed() throws SchedulerException {
        assertThat(runs).hasSizeGreaterThan(3);
        for (JobDetail run : runs) {
            String code = run.getKey().getGroup() + ".run." + run.getKey().getName();
            assertThat(run.requestsRecovery()).as(code).isTrue();
            assertThat(run.isDurable()).as(code).isTrue();
            assertThat(run.getJobClass()).as(code).hasAnnotation(DisallowConcurrentExecution.class);
            assertThat(run.getJobClass().getPackageName())
                    .isEqualTo("freshet." + run.getKey().getGroup());
            assertThat(messages.getMessage(code, null, "", Locale.ENGLISH))
                    .as(code)
                    .isNotBlank();
            assertThat(messages.getMessage(code + ".what", null, "", Locale.ENGLISH))
                    .as(code)
                    .isNotBlank();
        }
        assertThat(declared)
                .filteredOn(CronTrigger.class::isInstance)
                .isNotEmpty()
                .allSatisfy(trigger -> assertThat(trigger.getMisfireInstruction())
                        .as(trigger.getKey().toString())
                        .isEqualTo(CronTrigger.MISFIRE_INSTRUCTION_FIRE_ONCE_NOW));
    }
}
