package freshet.timetable;

import java.time.ZoneId;
import java.util.TimeZone;
import org.quartz.CronScheduleBuilder;
import org.quartz.Job;
import org.quartz.JobBuilder;
import org.quartz.JobDetail;
import org.quartz.JobExecutionContext;
import org.quartz.SimpleScheduleBuilder;
import org.quartz.Trigger;
import org.quartz.TriggerBuilder;

/**
 * Words for a run, the work that a room does by itself: one idempotent method of its door. A run that was cut off is done again by
 * another node or at the next start; one that was missed is made up once, however often it was missed. Its names stand in the database
 * and its words in the room's messages, under {@code room.run.name}.
 */
public final class Run {

    static final String ZONE = "zone";

    private Run() {}

    public static JobDetail of(String room, String name, Class<? extends Job> job) {
        return JobBuilder.newJob(job)
                .withIdentity(name, room)
                .storeDurably()
                .requestRecovery()
                .build();
    }

    /** Once at each start of a node, for what was missed while nothing ran. */
    public static Trigger atStart(JobDetail run) {
        return TriggerBuilder.newTrigger()
                .withIdentity(run.getKey().getName() + " at start", run.getKey().getGroup())
                .forJob(run)
                .startNow()
                .withSchedule(SimpleScheduleBuilder.simpleSchedule().withMisfireHandlingInstructionFireNow())
                .build();
    }

    /** At these times of UTC, a cron expression. */
    public static Trigger at(JobDetail run, String times) {
        return TriggerBuilder.newTrigger()
                .withIdentity(run.getKey().getName(), run.getKey().getGroup())
                .forJob(run)
                .withSchedule(CronScheduleBuilder.cronSchedule(times)
                        .inTimeZone(TimeZone.getTimeZone("UTC"))
                        .withMisfireHandlingInstructionFireAndProceed())
                .build();
    }

    /** The zone for whose sites a {@link LocalRun} runs. */
    public static ZoneId zone(JobExecutionContext context) {
        return ZoneId.of(context.getMergedJobDataMap().getString(ZONE));
    }
}
