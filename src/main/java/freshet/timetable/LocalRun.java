package freshet.timetable;

import java.time.ZoneId;
import java.util.TimeZone;
import org.quartz.CronScheduleBuilder;
import org.quartz.CronTrigger;
import org.quartz.JobDetail;
import org.quartz.TriggerBuilder;

/**
 * A run that each time zone of our sites has for itself, at the times of its own clock, a cron expression; sites that share a zone share
 * the run. A time that a zone's clock skips on a day is not made up by the expression, and one that comes twice fires twice: whoever
 * wants once a day takes an hour in which no zone moves its clock.
 */
public record LocalRun(JobDetail run, String times) {

    CronTrigger in(ZoneId zone) {
        return TriggerBuilder.newTrigger()
                .withIdentity(
                        run.getKey().getName() + " " + zone.getId(),
                        run.getKey().getGroup())
                .forJob(run)
                .usingJobData(Run.ZONE, zone.getId())
                .withSchedule(CronScheduleBuilder.cronSchedule(times)
                        .inTimeZone(TimeZone.getTimeZone(zone))
                        .withMisfireHandlingInstructionFireAndProceed())
                .build();
    }
}
